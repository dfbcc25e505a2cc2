#include "scale/joined_lines.h"

#include "scale/line.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <string>
#include <vector>

namespace keenfall::scale {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

constexpr double kShortPauseS = 0.2;
constexpr double kLongPauseS = 1;

std::vector<std::string> texts_of(const std::vector<JoinedLine>& lines) {
  std::vector<std::string> texts;
  for (const JoinedLine& line : lines) {
    texts.push_back(line.is_too_long ? "too long" : shown_line(line.bytes));
  }
  return texts;
}

JoinedLines at_a_line() {
  JoinedLines lines;
  lines.after_pause(kShortPauseS);
  return lines;
}

std::vector<std::string> taken(JoinedLines& lines, const std::vector<std::string>& pieces) {
  std::vector<std::string> all;
  for (const std::string& piece : pieces) {
    for (const std::string& text : texts_of(lines.take(piece))) all.push_back(text);
  }
  return all;
}

TEST(JoinedLines, PiecesBecomeTheLineThatTheyAreOf) {
  JoinedLines lines = at_a_line();

  EXPECT_THAT(taken(lines, {"ST,G", "S,+ 10", "4.2 g", "\r", "\n104.", "3 g\r\n"}),
              ElementsAre("ST,GS,+ 104.2 g", "104.3 g"));
}

TEST(JoinedLines, ALineEndsWithCrOrLfOrBoth) {
  for (const std::string end : {"\r", "\n", "\r\n", "\n\r", "\r\n\r\n", "\x8D\n"}) {
    JoinedLines lines = at_a_line();

    EXPECT_THAT(taken(lines, {"1 g" + end + "2 g" + end}), ElementsAre("1 g", "2 g"));
  }
}

TEST(JoinedLines, TheTailOfALineIsNoLine) {
  JoinedLines lines;

  EXPECT_THAT(taken(lines, {"4.2 g\r\n", "104.3 g\r\n"}), ElementsAre("104.3 g"));
}

TEST(JoinedLines, AfterAPauseALineBegins) {
  JoinedLines lines;
  lines.after_pause(kShortPauseS);

  EXPECT_THAT(taken(lines, {"104.3 g\r\n"}), ElementsAre("104.3 g"));
}

TEST(JoinedLines, WhatComesAfterALongPauseWithinALineIsNotJoined) {
  JoinedLines lines = at_a_line();
  EXPECT_THAT(taken(lines, {"ST,GS,+ 10"}), IsEmpty());
  lines.after_pause(kLongPauseS);

  EXPECT_THAT(taken(lines, {"104.2 g\r\n", "104.3 g\r\n"}), ElementsAre("104.3 g"));
}

TEST(JoinedLines, AShortPauseWithinALineIsNothing) {
  JoinedLines lines = at_a_line();
  EXPECT_THAT(taken(lines, {"ST,GS,+ 10"}), IsEmpty());
  lines.after_pause(kLongPauseS * 0.9);

  EXPECT_THAT(taken(lines, {"4.2 g\r\n"}), ElementsAre("ST,GS,+ 104.2 g"));
}

TEST(JoinedLines, OfALineThatIsTooLongItIsTold) {
  JoinedLines lines = at_a_line();
  const std::string endless(10000, 'x');

  EXPECT_THAT(taken(lines, {endless, endless, "\r\n104.2 g\r\n"}),
              ElementsAre("too long", "104.2 g"));
}

TEST(JoinedLines, ALineIsNeverLongerThanTheLongest) {
  EXPECT_TRUE(rc::check("bytes in any pieces", [](const std::vector<std::string>& pieces) {
    JoinedLines lines = at_a_line();
    for (const std::string& piece : pieces) {
      for (const JoinedLine& line : lines.take(piece)) RC_ASSERT(line.bytes.size() <= kLongestLine);
    }
  }));
}

TEST(JoinedLines, HowTheBytesAreDividedDoesNotMatter) {
  EXPECT_TRUE(rc::check("the same bytes in two ways", [] {
    const auto bytes =
        *rc::gen::container<std::string>(rc::gen::elementOf(std::string("14.2g \r\n")));
    const auto cut = static_cast<std::size_t>(*rc::gen::inRange(0, 40));
    JoinedLines whole = at_a_line();
    JoinedLines divided = at_a_line();
    const std::size_t at = std::min(cut, bytes.size());
    RC_ASSERT(taken(whole, {bytes}) == taken(divided, {bytes.substr(0, at), bytes.substr(at)}));
  }));
}

}  // namespace
}  // namespace keenfall::scale
