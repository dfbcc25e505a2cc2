#include "exchange/text_lines.h"

#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

TEST(TextLines, AreCountedFromOneWithAnyLineEnd) {
  EXPECT_EQ(line_at("a\nb", 0), 1U);
  EXPECT_EQ(line_at("a\nb", 2), 2U);
  EXPECT_EQ(line_at("a\r\nb", 3), 2U);
  EXPECT_EQ(line_at("a\rb", 2), 2U);
  EXPECT_EQ(line_at("", 5), 1U);
}

TEST(Texts, AreTrimmedOfBlanksAtBothEndsOnly) {
  EXPECT_EQ(trimmed("  a b\t\xC2\xA0"), "a b");
  EXPECT_EQ(trimmed(" \t "), "");
  EXPECT_EQ(trimmed(""), "");
}

TEST(Texts, AreFoldedForComparison) {
  EXPECT_EQ(folded("Cut-Length_mm "), "cutlengthmm");
  EXPECT_EQ(folded("Bevel angle"), folded("bevel_angle"));
}

TEST(Texts, AreCountedInCharactersNotBytes) { EXPECT_EQ(character_count("17°"), 3U); }

TEST(Texts, AreRepeatedInOneLineAndCutShort) {
  EXPECT_EQ(excerpt("a\nb"), "a b");
  EXPECT_EQ(excerpt(std::string(100, 'x')), std::string(60, 'x') + "…");
  EXPECT_EQ(in_quotes("ten"), "“ten”");
}

}  // namespace
}  // namespace keenfall::exchange
