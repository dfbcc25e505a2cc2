#include "exchange/text_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <unistd.h>
#include <filesystem>
#include <fstream>
#include <string>

namespace keenfall::exchange {
namespace {

using testing::HasSubstr;

using namespace std::string_literals;

std::string refusal_of(std::string_view bytes) {
  const auto text = text_of(bytes, "t.csv");
  return text ? "taken" : base::in_words(text.error());
}

// A file of this test's own, removed at its end.
class TextFiles : public testing::Test {
 protected:
  void SetUp() override {
    path_ = std::filesystem::temp_directory_path() /
            ("keenfall_" + std::to_string(getpid()) + "_" +
             testing::UnitTest::GetInstance()->current_test_info()->name());
  }
  void TearDown() override {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }

  void write(const std::string& bytes) const { std::ofstream(path_, std::ios::binary) << bytes; }

  std::filesystem::path path_;
};

TEST_F(TextFiles, AreReadWhole) {
  const std::string bytes = std::string(200'000, 'a') + "\r\nb";
  write(bytes);

  EXPECT_EQ(read_text_file(path_.string()), bytes);
}

TEST_F(TextFiles, ThatAreNotThereAreSaidSo) {
  const auto text = read_text_file(path_.string());

  ASSERT_FALSE(text);
  EXPECT_EQ(text.error().kind, base::ProblemKind::unreadable);
  EXPECT_THAT(base::in_words(text.error()), HasSubstr("There is no such file."));
}

TEST_F(TextFiles, ThatAreFoldersAreSaidSo) {
  std::filesystem::create_directory(path_);

  const auto text = read_text_file(path_.string());

  ASSERT_FALSE(text);
  EXPECT_THAT(text.error().sentence, HasSubstr("This is a folder"));
}

TEST_F(TextFiles, WithoutPermissionAreSaidSo) {
  if (geteuid() == 0) GTEST_SKIP() << "everything is readable to root";
  write("a,b\n");
  std::filesystem::permissions(path_, std::filesystem::perms::none);

  const auto text = read_text_file(path_.string());

  ASSERT_FALSE(text);
  EXPECT_EQ(text.error().kind, base::ProblemKind::unreadable);
  EXPECT_THAT(text.error().sentence, HasSubstr("cannot be opened"));
}

TEST_F(TextFiles, LargerThanTheLimitAreRefusedWithTheirSize) {
  write("a");
  std::filesystem::resize_file(path_, 200'000'000);

  const auto text = read_text_file(path_.string());

  ASSERT_FALSE(text);
  EXPECT_EQ(text.error().kind, base::ProblemKind::too_large);
  EXPECT_THAT(text.error().sentence, HasSubstr("200 MB large; at most 128 MB"));
}

TEST(TextBytes, LoseTheirByteOrderMark) {
  EXPECT_EQ(text_of("\xEF\xBB\xBF"
                    "a,b",
                    "t.csv"),
            "a,b");
  EXPECT_EQ(text_of("a,b", "t.csv"), "a,b");
  EXPECT_EQ(text_of("", "t.csv"), "");
}

TEST(TextBytes, InUtf16AreRefusedWithTheWayOut) {
  const std::string way_out = "choose UTF-8";

  EXPECT_THAT(refusal_of("\xFF\xFE"
                         "b\0l\0a\0d\0e\0"s),
              HasSubstr(way_out));
  EXPECT_THAT(refusal_of("\xFE\xFF"
                         "\0b\0l\0a\0d\0e"s),
              HasSubstr(way_out));
  EXPECT_THAT(refusal_of("b\0l\0a\0d\0e\0,\0m\0"s), HasSubstr("UTF-16"));
}

TEST(TextBytes, OfASpreadsheetOrAPictureAreRefused) {
  EXPECT_THAT(refusal_of("\xD0\xCF\x11\xE0\xA1"), HasSubstr("old binary format (.xls)"));
  EXPECT_THAT(refusal_of("\x89PNG\r\n\x1A\n"), HasSubstr("not a table"));
}

TEST(TextBytes, WithANulAreRefusedWithItsLine) {
  EXPECT_THAT(refusal_of("blade,medium\nA,\0B\n"s), HasSubstr("t.csv, line 2: "));
  EXPECT_THAT(refusal_of("blade,medium\nA,\0B\n"s), HasSubstr("control character 0x00"));
}

TEST(TextBytes, OfAnotherCodePageAreRefusedWithTheirLine) {
  const std::string refusal = refusal_of("blade,medium\r\nA,B\r\nA,17\xB0\r\n");

  EXPECT_THAT(refusal, HasSubstr("line 3: The byte 0xB0 does not belong in UTF-8 text"));
}

// RFC 3629: section 7 (examples), section 3 and 4 (overlong forms, surrogates, beyond U+10FFFF).
TEST(TextBytes, AreCountedUpToTheFirstThatIsNotUtf8) {
  EXPECT_EQ(utf8_byte_count(""), 0U);
  EXPECT_EQ(utf8_byte_count("caf\xC3\xA9 \x01"), 7U);
  EXPECT_EQ(utf8_byte_count("caf\xE9 x"), 3U);
  EXPECT_EQ(utf8_byte_count("x\xF0\x9D\x84"), 1U);
}

TEST(TextBytes, AreUtf8AsRfc3629HasIt) {
  for (const char* good : {"A\xE2\x89\xA2\xCE\x91.",
                           "\xED\x95\x9C\xEA\xB5\xAD\xEC\x96\xB4",
                           "\xE6\x97\xA5\xE6\x9C\xAC\xE8\xAA\x9E",
                           "\xF0\xA3\x8E\xB4"}) {
    EXPECT_EQ(refusal_of(good), "taken") << good;
  }
  for (const char* bad : {"\xC0\x80",
                          "\xE0\x80\x80",
                          "\xF0\x80\x80\x80",
                          "\xED\xA1\x8C",
                          "\xF4\x90\x80\x80",
                          "\xF5\x80\x80\x80",
                          "\xE2\x89",
                          "\x80"}) {
    EXPECT_NE(refusal_of(bad), "taken");
  }
}

}  // namespace
}  // namespace keenfall::exchange
