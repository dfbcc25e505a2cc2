#include "server/site.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

namespace keenfall::server {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::SizeIs;

const std::string kPack =
    "/assets/index-A1.js\ttext/javascript\tj1\t5\t3\n"
    "/index.html\ttext/html\th1\t4\t2\n"
    "\n"
    "whole"
    "wgz"
    "page"
    "pg";

HttpResponse asked(HttpRequest request) {
  static const std::vector<PageFile> files = unpacked(kPack);
  if (request.method.empty()) request.method = "GET";
  return site_answer(request, files);
}

TEST(Pages, AreUnpackedAsTheyWerePacked) {
  const auto files = unpacked(kPack);

  ASSERT_THAT(files, SizeIs(2));
  EXPECT_EQ(files[0],
            (PageFile{.path = "/assets/index-A1.js",
                      .content_type = "text/javascript",
                      .tag = "j1",
                      .whole = "whole",
                      .compressed = "wgz"}));
  EXPECT_EQ(files[1].whole, "page");
  EXPECT_EQ(files[1].compressed, "pg");
}

TEST(Pages, ArePackedByUsOrNotAtAll) {
  for (const std::string& pack : {std::string(),
                                  std::string("/a\tt\tg\t1\t1\n"),
                                  std::string("/a\tt\tg\t9\t1\n\nab"),
                                  std::string("/a\tt\tg\t1\t1\n\nabc"),
                                  std::string("/a\tt\tg\tx\t1\n\nab"),
                                  std::string("/a\tt\tg\t-1\t1\n\nab")}) {
    EXPECT_THROW((void)unpacked(pack), std::logic_error) << pack;
  }
}

TEST(Pages, OfThisProgramBeginWithOneThatNamesItsScript) {
  const auto page = std::ranges::find(own_pages(), "/index.html", &PageFile::path);

  ASSERT_NE(page, own_pages().end());
  EXPECT_THAT(std::string(page->whole), HasSubstr("<script type=\"module\""));
  EXPECT_THAT(std::string(page->whole), Not(HasSubstr("<script>")));
  EXPECT_EQ(page->compressed.substr(0, 2), "\x1f\x8b");  // gzip (RFC 1952, section 2.3.1)
}

TEST(TheSite, AnswersAFileUnderItsPath) {
  const HttpResponse answer = asked({.path = "/assets/index-A1.js"});

  EXPECT_EQ(answer.status, 200);
  EXPECT_EQ(answer.content_type, "text/javascript");
  EXPECT_EQ(answer.body, "whole");
}

TEST(TheSite, AnswersItsFirstPageForEveryPathOfTheApp) {
  for (const char* path : {"/", "/trials/7f", "/trials/7f/", "/a.b/c"}) {
    EXPECT_EQ(asked({.path = path}).body, "page") << path;
  }
}

TEST(TheSite, HasNothingElse) {
  for (const char* path : {"/assets/index-A2.js", "/etc/passwd.txt", "/favicon.ico", "/a.b"}) {
    const HttpResponse answer = asked({.path = path});
    EXPECT_EQ(answer.status, 404) << path;
    EXPECT_EQ(answer.body, std::string("Keenfall has no page at ") + path + ".\n");
  }
}

TEST(TheSite, IsOnlyRead) {
  const HttpResponse answer = asked({.method = "POST", .path = "/"});

  EXPECT_EQ(answer.status, 405);
  EXPECT_THAT(answer.headers, Contains(NamedText{"Allow", "GET, HEAD"}));
}

TEST(TheSite, CompressesForWhoeverTakesIt) {
  const NamedText is_compressed{"Content-Encoding", "gzip"};
  for (const char* takes : {"gzip", "br, GZIP", "gzip;q=0.5, br", "br;q=1.0, gzip;q=0.8"}) {
    const HttpResponse answer = asked({.path = "/", .headers = {{"accept-encoding", takes}}});
    EXPECT_EQ(answer.body, "pg") << takes;
    EXPECT_THAT(answer.headers, Contains(is_compressed));
  }
  for (const char* takes : {"", "br", "gzip;q=0", "gzip; q=0.0, br"}) {
    const HttpResponse answer = asked({.path = "/", .headers = {{"accept-encoding", takes}}});
    EXPECT_EQ(answer.body, "page") << takes;
    EXPECT_THAT(answer.headers, Not(Contains(is_compressed)));
  }
}

TEST(TheSite, SaysSoWhereABrowserHasItAlready) {
  const HttpResponse answer = asked({.path = "/", .headers = {{"if-none-match", "W/\"h1\""}}});

  EXPECT_EQ(answer.status, 304);
  EXPECT_EQ(answer.body, "");
  EXPECT_EQ(asked({.path = "/", .headers = {{"if-none-match", "W/\"h0\""}}}).status, 200);
}

TEST(TheSite, LetsABrowserKeepOnlyWhatIsNamedByItsContent) {
  EXPECT_THAT(asked({.path = "/assets/index-A1.js"}).headers,
              Contains(NamedText{"Cache-Control", "private, max-age=31536000, immutable"}));
  EXPECT_THAT(asked({.path = "/"}).headers, Contains(NamedText{"Cache-Control", "no-cache"}));
}

}  // namespace
}  // namespace keenfall::server
