#include "cli/outside_range.h"

#include "telling/rounded.h"

#include <gtest/gtest.h>

#include <string>

namespace keenfall::cli {
namespace {

std::string words_of(double usual) {
  const wear::Sensitivity found{.usual_answer = usual,
                                .joint = numerics::Interval{.lo90 = 1.42, .hi90 = 2.96}};
  return outside_words(
      found, "The ratio", [](double ratio) { return telling::to_figures(ratio, 2); });
}

TEST(OutsideRange, IsSaidWithTheSideItLiesOn) {
  EXPECT_EQ(words_of(1.2), " The ratio with the usual figures, 1.2, lies below this range.");
  EXPECT_EQ(words_of(3.4), " The ratio with the usual figures, 3.4, lies above this range.");
}

TEST(OutsideRange, IsNotSaidOfAnAnswerInsideAsBothAreShown) {
  EXPECT_EQ(words_of(2), "");
  EXPECT_EQ(words_of(1.41), "");
  EXPECT_EQ(words_of(2.98), "");
}

TEST(OutsideRange, IsNotSaidWithoutARange) {
  EXPECT_EQ(outside_words({.usual_answer = 2}, "The ratio", telling::cuts_text), "");
}

}  // namespace
}  // namespace keenfall::cli
