#include "server/request_target.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <string>

namespace keenfall::server {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

TEST(RequestTarget, IsAPathAndAQueryInPlainText) {
  const auto target = request_target("/api/v1/trials/7f?words=two%20words+more&n=%C2%B5m&bare");

  ASSERT_TRUE(target);
  EXPECT_EQ(target->path, "/api/v1/trials/7f");
  EXPECT_THAT(
      target->query,
      ElementsAre(
          NamedText{"words", "two words more"}, NamedText{"n", "\u00B5m"}, NamedText{"bare", ""}));
}

TEST(RequestTarget, KeepsAPlusInAPathAndASlashAtItsEnd) {
  EXPECT_EQ(request_target("/a+b/")->path, "/a+b/");
  EXPECT_EQ(request_target("/")->path, "/");
  EXPECT_THAT(request_target("/?&&")->query, IsEmpty());
}

class ARefusedTarget : public ::testing::TestWithParam<std::string> {};

TEST_P(ARefusedTarget, IsNotTakenForAnyPath) { EXPECT_FALSE(request_target(GetParam())); }

INSTANTIATE_TEST_SUITE_P(RequestTargets,
                         ARefusedTarget,
                         ::testing::Values("",
                                           "*",
                                           "api",
                                           "http://127.0.0.1/",
                                           "/../etc/passwd",
                                           "/a/..",
                                           "/./a",
                                           "/%2e%2e/etc/passwd",
                                           "/%2E./a",
                                           "/a%2fb",
                                           "/a%2Fb",
                                           "/a%5cb",
                                           "/a\\b",
                                           "//a",
                                           "/a//b",
                                           "/a%00.html",
                                           "/a%0d%0ab",
                                           "/a%7f",
                                           "/a#b",
                                           "/%",
                                           "/%2",
                                           "/%zz",
                                           "/%+1",
                                           "/%ff",
                                           "/%c0%af",        // "/" in too many bytes
                                           "/%ed%a0%80",     // half of a pair of surrogates
                                           "/%f4%90%80%80",  // beyond the last character
                                           "/%e2%82",        // cut short
                                           "/a?b=%00",
                                           "/a?b=%ff",
                                           "/a?b=%1",
                                           "/a?%0a=b"));

TEST(PartsOfAPath, AreWhatStandsBetweenItsSlashes) {
  EXPECT_THAT(parts_of_path("/"), IsEmpty());
  EXPECT_THAT(parts_of_path("/a/b"), ElementsAre("a", "b"));
  EXPECT_THAT(parts_of_path("/a/"), ElementsAre("a", ""));
}

std::string written_with_percents(const std::string& text) {
  static constexpr const char* kDigits = "0123456789abcdef";
  std::string written;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    written += '%';
    written += kDigits[byte >> 4U];
    written += kDigits[byte & 15U];
  }
  return written;
}

TEST(RequestTarget, ReadsBackWhateverIsWrittenWithPercents) {
  EXPECT_TRUE(rc::check([](const std::vector<unsigned char>& bytes) {
    std::string text;
    for (const unsigned char byte : bytes) text += static_cast<char>(byte % 95 + ' ');
    const bool has_separator = text.find_first_of("/\\") != std::string::npos;
    RC_PRE(!has_separator && text != "." && text != "..");

    const auto target =
        request_target("/" + written_with_percents(text) + "?q=" + written_with_percents(text));

    RC_ASSERT(target.has_value());
    RC_ASSERT(target->path == "/" + text);
    RC_ASSERT(target->query.front().text == text);
  }));
}

}  // namespace
}  // namespace keenfall::server
