#include "planning/two_sample_chances.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numeric>
#include <vector>

namespace keenfall::planning {
namespace {

using verdicts::Verdict;

double of(const VerdictProbabilities& chances, Verdict verdict) {
  return chances[static_cast<std::size_t>(verdict)];
}

double longer_of(const VerdictProbabilities& chances) {
  return of(chances, Verdict::longer_and_worth_having) + of(chances, Verdict::longer) +
         of(chances, Verdict::longer_but_too_little_to_matter);
}

double shorter_of(const VerdictProbabilities& chances) {
  return of(chances, Verdict::shorter_by_enough_to_matter) + of(chances, Verdict::shorter) +
         of(chances, Verdict::shorter_but_too_little_to_matter);
}

// tests/reference/planning.R: t quantiles of base R.
TEST(TwoSamples, ReachAsFarAsTIntervals) {
  EXPECT_NEAR(half_width_95(2, 0.20), 2.364, 0.0005);
  EXPECT_NEAR(half_width_95(3, 0.10), 1.254, 0.0005);
  EXPECT_NEAR(half_width_95(3, 0.40), 2.476, 0.0005);
  EXPECT_NEAR(half_width_95(6, 0.20), 1.293, 0.0005);
  EXPECT_NEAR(half_width_95(12, 0.30), 1.289, 0.0005);
  EXPECT_NEAR(half_width_95(20, 0.25), 1.174, 0.0005);
}

// tests/reference/planning.R: power.t.test(strict = TRUE), log sd 0.2.
TEST(TwoSamples, AreToldApartAsOftenAsByATTest) {
  struct Power {
    int runs_each;
    double ratio;
    double power;
  };
  for (const Power& r : {Power{2, 1.25, 0.10594},
                         Power{2, 3, 0.78178},
                         Power{3, 1.5, 0.47233},
                         Power{3, 2, 0.88049},
                         Power{4, 1.5, 0.66839},
                         Power{6, 1.25, 0.41585},
                         Power{6, 1.5, 0.88481},
                         Power{10, 1.25, 0.65553},
                         Power{20, 1.25, 0.93026}}) {
    const auto chances = two_sample_chances({.runs_each = r.runs_each, .true_ratio = r.ratio});

    EXPECT_NEAR(longer_of(chances) + shorter_of(chances), r.power, 0.001)
        << r.runs_each << " runs, ratio " << r.ratio;
  }
}

// tests/reference/planning.R: two one-sided t tests, integrated by base R; log sd 0.2. An interval
// that lies inside the margin is "the same", or "too little" where it also clears equality.
TEST(TwoSamples, LieInsideTheMarginAsOftenAsByTwoOneSidedTests) {
  struct Inside {
    int runs_each;
    double ratio;
    double margin;
    double chance;
  };
  for (const Inside& r : {Inside{3, 1, 1.25, 0.04821},
                          Inside{3, 1.2, 1.5, 0.25929},
                          Inside{6, 1, 1.25, 0.19407},
                          Inside{6, 1, 1.5, 0.89384},
                          Inside{6, 1.2, 1.5, 0.56048},
                          Inside{10, 1.2, 1.25, 0.11071},
                          Inside{20, 1, 1.25, 0.93117}}) {
    const auto chances = two_sample_chances(
        {.runs_each = r.runs_each, .true_ratio = r.ratio, .worth_it_margin = r.margin});

    EXPECT_NEAR(of(chances, Verdict::practically_the_same) +
                    of(chances, Verdict::longer_but_too_little_to_matter) +
                    of(chances, Verdict::shorter_but_too_little_to_matter),
                r.chance,
                0.001)
        << r.runs_each << " runs, ratio " << r.ratio << ", margin " << r.margin;
  }
}

TEST(TwoSamples, AreCalledLongerOrShorterInFiveOfAHundredWhereTheyAreAlike) {
  for (const int runs_each : {2, 3, 6, 20}) {
    const auto chances = two_sample_chances({.runs_each = runs_each});

    EXPECT_NEAR(longer_of(chances) + shorter_of(chances), 0.05, 0.001);
  }
}

TEST(TwoSamples, HaveOneVerdictAlways) {
  for (const double ratio : {0.3, 0.9, 1.0, 1.4, 5.0}) {
    const auto chances = two_sample_chances({.runs_each = 3, .log_sd = 0.35, .true_ratio = ratio});

    EXPECT_NEAR(std::accumulate(chances.begin(), chances.end(), 0.0), 1, 1e-9);
  }
}

TEST(TwoSamples, AreTheirOwnMirrorImage) {
  const auto over = two_sample_chances({.true_ratio = 1.3});
  const auto under = two_sample_chances({.true_ratio = 1 / 1.3});

  EXPECT_NEAR(of(over, Verdict::longer), of(under, Verdict::shorter), 1e-9);
  EXPECT_NEAR(of(over, Verdict::longer_and_worth_having),
              of(under, Verdict::shorter_by_enough_to_matter),
              1e-9);
  EXPECT_NEAR(
      of(over, Verdict::practically_the_same), of(under, Verdict::practically_the_same), 1e-9);
}

TEST(TwoSamples, AreNotAskedForWithoutRuns) {
  EXPECT_THROW((void)two_sample_chances({.runs_each = 1}), std::logic_error);
  EXPECT_THROW((void)two_sample_chances({.log_sd = 0}), std::logic_error);
  EXPECT_THROW((void)two_sample_chances({.worth_it_margin = 1}), std::logic_error);
  EXPECT_THROW((void)half_width_95(1, 0.2), std::logic_error);
  EXPECT_THROW((void)smallest_ratio_shown(1, 0.2), std::logic_error);
}

// tests/reference/planning.R: with 3 runs each and log sd 0.2 the power is 0.88 at a ratio of 2 and
// 0.47 at 1.5, with 10 runs 0.66 at 1.25; with 2 runs 0.78 at 3.
TEST(SmallestRatioShown, LiesBetweenThePowersAboutEightyPercent) {
  EXPECT_GT(*smallest_ratio_shown(3, 0.2), 1.5);
  EXPECT_LT(*smallest_ratio_shown(3, 0.2), 2);
  EXPECT_GT(*smallest_ratio_shown(10, 0.2), 1.25);
  EXPECT_GT(*smallest_ratio_shown(2, 0.2), 3);
  EXPECT_NEAR(
      longer_of(two_sample_chances({.runs_each = 4, .true_ratio = *smallest_ratio_shown(4, 0.2)})),
      0.8,
      0.001);
}

TEST(SmallestRatioShown, IsNoneWhereRunsScatterTooMuch) {
  EXPECT_FALSE(smallest_ratio_shown(2, 2));
}

// tests/reference/planning.R: "fewest runs for 80 % at equality". Where a few runs are called
// longer or shorter by chance they are not called the same, so that one run more may be needed.
TEST(FewestRunsToCallTheSame, AreThoseOfTwoOneSidedTestsOrOneMore) {
  struct Fewest {
    double margin;
    double log_sd;
    int runs;
  };
  for (const Fewest& r : {Fewest{1.25, 0.10, 5},
                          Fewest{1.25, 0.20, 15},
                          Fewest{1.25, 0.30, 32},
                          Fewest{1.33, 0.20, 10},
                          Fewest{1.5, 0.15, 4},
                          Fewest{1.5, 0.25, 8},
                          Fewest{1.5, 0.40, 18}}) {
    const auto runs =
        fewest_runs_to_call_the_same({.log_sd = r.log_sd, .worth_it_margin = r.margin}, 100);

    ASSERT_TRUE(runs);
    EXPECT_GE(*runs, r.runs);
    EXPECT_LE(*runs, r.runs + 1);
  }
}

// tests/reference/planning.R: "fewest runs for a power of 80 %". At a ratio of 2 and more no trial
// is settled otherwise than by longer.
TEST(FewestRunsToSettle, AreThoseOfATTestWhereTheRatioIsWide) {
  const std::vector<double> log_sds{0.15, 0.20, 0.25, 0.30, 0.40};
  const std::array runs{3, 3, 4, 5, 7};
  for (std::size_t i = 0; i < runs.size(); ++i) {
    EXPECT_EQ(fewest_runs_to_settle({.log_sd = log_sds[i], .true_ratio = 2}, 100), runs[i]);
  }
}

TEST(FewestRunsToCallTheSame, AreNoneWhereNoneWillDo) {
  EXPECT_FALSE(fewest_runs_to_call_the_same({.log_sd = 1, .worth_it_margin = 1.1}, 60));
  EXPECT_FALSE(fewest_runs_to_call_the_same({}, 1));
}

TEST(FewestRunsToSettle, AreNoneWhereNoneWillDo) {
  EXPECT_FALSE(fewest_runs_to_settle({.log_sd = 1, .true_ratio = 1.2}, 20));
}

TEST(TwoSamples, AreNotAskedForWithoutScatterOrRatio) {
  EXPECT_THROW((void)two_sample_chances({.true_ratio = 0}), std::logic_error);
  EXPECT_THROW((void)half_width_95(6, 0), std::logic_error);
  EXPECT_THROW((void)smallest_ratio_shown(6, 0), std::logic_error);
}

}  // namespace
}  // namespace keenfall::planning
