#include "cli/text_layout.h"

#include <gtest/gtest.h>

#include <string>

namespace keenfall::cli {
namespace {

constexpr Look kUnicode = {.width = 60, .unicode = true, .colour = true};
constexpr Look kAscii = {.width = 60, .unicode = false};

TEST(TextLayout, CountsACharacterOfSeveralBytesAsOneColumn) { EXPECT_EQ(columns_of("17° µm"), 6); }

TEST(TextLayout, CountsNoColumnForColour) {
  EXPECT_EQ(columns_of(as_settled("longer", kUnicode)), 6);
}

TEST(TextLayout, ColoursOnlyWhereTheLookIsColoured) {
  EXPECT_NE(as_settled("longer", kUnicode), "longer");
  EXPECT_EQ(as_settled("longer", kAscii), "longer");
  EXPECT_EQ(as_not_settled("open", kAscii), "open");
}

TEST(TextLayout, FallsBackToAsciiWithoutLosingUnits) {
  EXPECT_EQ(shown_as("17° on 9 µm, 28–42", kAscii), "17 deg on 9 um, 28-42");
  EXPECT_EQ(shown_as("0.5 mm³ of 12 µm²", kAscii), "0.5 mm3 of 12 um2");
  EXPECT_EQ(shown_as("ножик", kAscii), "?????");
}

TEST(TextLayout, LetsNoNameSteerTheTerminal) {
  EXPECT_EQ(shown_as("A\x1b[2J\nB", kUnicode), "A?[2J?B");
  EXPECT_EQ(shown_as("A\xE2\x80\xAEgnol (6.2 to 4.1)", kUnicode), "A?gnol (6.2 to 4.1)");
}

TEST(TextLayout, PadsToEitherSide) {
  EXPECT_EQ(fitted("8.4", 5, Side::right, kUnicode), "  8.4");
  EXPECT_EQ(fitted("C", 3, Side::left, kUnicode), "C  ");
}

TEST(TextLayout, ShortensWhatIsTooLong) {
  EXPECT_EQ(fitted("trimming knife", 8, Side::left, kUnicode), "trimmin…");
  EXPECT_EQ(shortened_in_the_middle("trimming knife 12", 9, kUnicode), "trim…e 12");
}

TEST(TextLayout, BreaksLinesAtSpacesAndIndents) {
  const Look narrow{.width = 12};

  EXPECT_EQ(wrapped("one two three four", {.first = 2, .rest = 4}, narrow),
            "  one two\n    three\n    four\n");
}

TEST(TextLayout, KeepsAPercentSignWithItsNumber) {
  const Look narrow{.width = 12};

  EXPECT_EQ(wrapped("interval 95 % of it", {}, narrow), "interval\n95 % of it\n");
}

TEST(TextLayout, PutsACommandBelowItsWordsOnOneLine) {
  EXPECT_EQ(with_command("To judge it:", "keenfall judge 'my own trial.csv'", {.width = 12}),
            "To judge it:\n  keenfall judge 'my own trial.csv'\n");
}

TEST(TextLayout, KeepsAWordWholeThatIsWiderThanTheLine) {
  EXPECT_EQ(wrapped("abcdefghijklmnop", {}, {.width = 8}), "abcdefghijklmnop\n");
}

}  // namespace
}  // namespace keenfall::cli
