#include "verdicts/planned_looks.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::verdicts {
namespace {

// Pocock's constants for known scatter, recomputed in tests/reference/looks.R: 2.289 against 1.960
// for "longer or shorter"; one-sided 5 % is close to half of two-sided 10 %: 1.992 against 1.645.
// With hundreds of runs the scatter is as good as known.
TEST(PlannedLooks, OfManyRunsNeedPococksConstants) {
  const LookStretch stretch = stretch_for_looks({.runs_each = {300, 600, 900}}, {1});

  EXPECT_NEAR(stretch.at_95, 2.289 / 1.960, 0.02);
  EXPECT_NEAR(stretch.at_90, 1.992 / 1.645, 0.02);
}

TEST(PlannedLooks, AtOneTimeOnlyNeedNothing) {
  EXPECT_EQ(stretch_for_looks({.runs_each = {6}}, {1}), LookStretch{});
}

TEST(PlannedLooks, NeedMoreTheOftenerOneLooks) {
  const LookStretch three = stretch_for_looks({.runs_each = {3, 6, 9}}, {1});
  const LookStretch seven = stretch_for_looks({.runs_each = {3, 4, 5, 6, 7, 8, 9}}, {1});

  EXPECT_GT(three.at_95, 1.05);
  EXPECT_GT(seven.at_95, three.at_95);
  EXPECT_GT(seven.at_90, three.at_90);
}

TEST(PlannedLooks, GiveTheSameFactorsForTheSameSeed) {
  const LooksPlan plan{.runs_each = {3, 6, 9}, .arms = 3};

  EXPECT_EQ(stretch_for_looks(plan, {4}), stretch_for_looks(plan, {4}));
}

// Known scatter and 10 equally spaced looks: 19.3 % (tests/reference/looks.R). With few runs the
// intervals are wider than normal ones to begin with.
TEST(PlannedLooks, WithoutThemLookingOnFrom3To12RunsDoublesFalseAnswers) {
  const double false_answers =
      false_answers_unadjusted({.runs_each = {3, 4, 5, 6, 7, 8, 9, 10, 11, 12}}, 0.25, {2});

  EXPECT_GT(false_answers, 0.10);
  EXPECT_LT(false_answers, 0.19);
}

TEST(PlannedLooks, StretchBoundsAboutTheMedianByRatio) {
  const RatioBounds bounds =
      stretched({.lo90 = 1, .hi90 = 4, .lo95 = 0.5, .hi95 = 8}, 2, {.at_95 = 2, .at_90 = 1});

  EXPECT_DOUBLE_EQ(bounds.lo90, 1);
  EXPECT_DOUBLE_EQ(bounds.hi90, 4);
  EXPECT_DOUBLE_EQ(bounds.lo95, 0.125);
  EXPECT_DOUBLE_EQ(bounds.hi95, 32);
}

TEST(PlannedLooks, ThatDoNotRiseAreMisuse) {
  EXPECT_THROW((void)stretch_for_looks({.runs_each = {6, 3}}, {1}), std::logic_error);
  EXPECT_THROW((void)stretch_for_looks({.runs_each = {1, 3}}, {1}), std::logic_error);
}

TEST(PlannedLooks, OfOneArmHaveNothingToCompareAndAreMisuse) {
  EXPECT_THROW((void)stretch_for_looks({.runs_each = {3, 6}, .arms = 1}, {1}), std::logic_error);
}

}  // namespace
}  // namespace keenfall::verdicts
