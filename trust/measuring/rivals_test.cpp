#include "trust/measuring/rivals.h"

#include "numerics/two_samples.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::trust {
namespace {

// Readings without error, so that curves give each run's half keenness exactly; Welch's interval of
// those is computed apart (numerics, checked against R).
CellTrial exact_trial(const std::vector<double>& halves_a,
                      const std::vector<double>& halves_b,
                      double shape) {
  CellTrial made{
      .key = {.kind = "thread_push", .thread = ""}, .a = "A", .b = "B", .medium = "sisal"};
  made.trial = {.blades = {{.name = "A"}, {.name = "B"}},
                .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  const auto add_runs = [&](const std::string& blade, const std::vector<double>& halves) {
    for (const double half : halves) {
      trials::Run run{.name = std::to_string(made.trial.runs.size()),
                      .arm = {.blade = blade, .medium = {.name = "sisal"}}};
      for (const double cuts : {0.0, 3.0, 10.0, 30.0, 100.0}) {
        run.readings.push_back({.cuts = cuts, .reading = 100 * (1 + std::pow(cuts / half, shape))});
      }
      made.trial.runs.push_back(run);
    }
  };
  add_runs("A", halves_a);
  add_runs("B", halves_b);
  return made;
}

std::vector<double> logs(std::vector<double> values) {
  for (double& value : values) value = std::log(value);
  return values;
}

TEST(Rivals, GiveWelchsIntervalOfTheRunsHalfKeenness) {
  const std::vector<double> a{50, 61, 44};
  const std::vector<double> b{30, 41, 28};
  const numerics::WelchTest expected = numerics::welch_test(logs(a), logs(b));
  const CellTrial trial = exact_trial(a, b, 0.7);

  for (const auto answer : {by_curves_of_runs(trial), by_one_shape(trial)}) {
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->lo, expected.lo95, 0.01);
    EXPECT_NEAR(answer->hi, expected.hi95, 0.01);
  }
}

TEST(Rivals, LookAtTheMediumThatIsAskedAboutOnly) {
  CellTrial trial = exact_trial({50, 61, 44}, {30, 41, 28}, 0.7);
  const auto alone = by_curves_of_runs(trial);
  for (trials::Run run : exact_trial({5, 6}, {300, 410}, 0.7).trial.runs) {
    run.arm.medium.name = "manila";
    trial.trial.runs.push_back(run);
  }

  const auto beside = by_curves_of_runs(trial);

  EXPECT_NEAR(beside->lo, alone->lo, 1e-9);
  EXPECT_NEAR(beside->hi, alone->hi, 1e-9);
}

TEST(Rivals, HaveNoAnswerForASingleRunByWelch) {
  const CellTrial trial = exact_trial({50}, {30, 41}, 0.7);

  EXPECT_FALSE(by_curves_of_runs(trial));
  EXPECT_FALSE(by_one_shape(trial));
  EXPECT_TRUE(by_plain_posterior(trial));
}

}  // namespace
}  // namespace keenfall::trust
