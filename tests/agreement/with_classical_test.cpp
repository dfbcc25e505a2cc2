// The classical tools under the verdicts against survival, lme4, emmeans and R's power functions,
// on the same trials. Made by with_classical.R; versions: README.md.
#include "blunting/inference/run_fit.h"
#include "numerics/censored_fit.h"
#include "numerics/summaries.h"
#include "numerics/two_samples.h"
#include "numerics/variance_components.h"
#include "tests/agreement/answers.h"
#include "tests/agreement/plain_fit.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

namespace keenfall::agreement {
namespace {

using Numbers = std::map<std::string, double>;  // by what they are

// Those of one trial; empty where the other program had no answer.
Numbers answered(const std::string& trial) {
  Numbers numbers;
  for (const Answer& answer : answers_about(trial, answers_in("classical.csv"))) {
    numbers[answer.what] = answer.numbers.at("value");
  }
  return numbers;
}

blunting::BluntingData data_of(const std::string& trial) {
  const trials::Trial taken = trial_named(trial);
  return *blunting::prepare(taken, blunting::fits_of(taken).at(0), blunting::plain_model().errors);
}

// After which checkpoint and by which the mean log reading stood log 2 above the first.
numerics::CensoredNumber doubled_between(const blunting::RunData& run,
                                         const std::vector<std::size_t>& arms) {
  numerics::CensoredNumber number{.covariates = {}};
  for (const std::size_t arm : arms) number.covariates.push_back(arm == run.arm ? 1 : 0);
  number.covariates[0] = 1;
  const double twice = run.checkpoints.front().log_bluntness + std::log(2.0);
  for (const blunting::Checkpoint& checkpoint : run.checkpoints) {
    if (checkpoint.log_bluntness >= twice) {
      number.by = checkpoint.log_cuts;
      return number;
    }
    number.after = checkpoint.log_cuts;
  }
  return number;
}

double own_life(const blunting::RunData& run) {
  std::vector<blunting::RunPoint> points;
  for (const blunting::Checkpoint& checkpoint : run.checkpoints) {
    points.push_back({.log_cuts = checkpoint.log_cuts,
                      .log_bluntness = checkpoint.log_bluntness,
                      .weight = 1 / checkpoint.relative_variance});
  }
  return blunting::fit_run(points, {}).curve.log_half_keenness;
}

class Classical : public testing::TestWithParam<std::string> {};

TEST_P(Classical, CensoredTimesAreThoseOfSurvival) {
  const Numbers wanted = answered(GetParam());
  if (!wanted.contains("lasting_scale")) GTEST_SKIP() << "survreg reached no fit either";
  const blunting::BluntingData data = data_of(GetParam());
  std::vector<numerics::CensoredNumber> numbers;
  const std::vector<std::size_t> arms = arms_as_in_table(data);
  for (const auto& run : data.runs) numbers.push_back(doubled_between(run, arms));

  const auto fit = numerics::fit_censored(numbers, numerics::LocationScaleErrors::logistic);

  ASSERT_TRUE(fit.converged);
  EXPECT_NEAR(fit.scale, wanted.at("lasting_scale"), 1e-5 * fit.scale);
  EXPECT_NEAR(fit.coefficients[0], wanted.at("lasting_first_arm"), 1e-5);
  for (std::size_t a = 1; a < data.arms.size(); ++a) {
    const std::string name = "lasting_arm_" + std::to_string(a + 1);
    EXPECT_NEAR(fit.coefficients[a], wanted.at(name), 1e-5) << name;
  }
}

TEST_P(Classical, ScatterOfTheStartsIsThatOfLme4) {
  const Numbers wanted = answered(GetParam());
  if (!wanted.contains("start_mean")) GTEST_SKIP() << "one reading a run";
  const trials::Trial trial = trial_named(GetParam());
  std::vector<std::vector<double>> runs;
  for (const trials::Run& run : trial.runs) {
    runs.emplace_back();
    for (const trials::Reading& reading : run.readings) {
      if (reading.cuts == 0) runs.back().push_back(std::log(reading.reading));
    }
  }

  const numerics::VarianceComponents found = numerics::variance_components(runs);

  EXPECT_NEAR(found.mean, wanted.at("start_mean"), 1e-6);
  EXPECT_NEAR(found.mean_standard_error, wanted.at("start_mean_error"), 1e-6);
  EXPECT_NEAR(found.sd_between, wanted.at("start_sd_between"), 1e-5);
  EXPECT_NEAR(found.sd_within, wanted.at("start_sd_within"), 1e-5);
  EXPECT_NEAR(found.log_likelihood, wanted.at("start_log_likelihood"), 1e-6);
}

TEST_P(Classical, PowerIsThatOfR) {
  const Numbers wanted = answered(GetParam());
  if (!wanted.contains("power")) GTEST_SKIP() << "no truth is known of the reference trial";
  const numerics::TwoSampleDesign design{.per_group = wanted.at("design_runs"),
                                         .difference = std::log(1.5),
                                         .sd = wanted.at("design_sd")};

  EXPECT_NEAR(numerics::power_of(design), wanted.at("power"), 1e-6);
  EXPECT_NEAR(numerics::per_group_for(design, 0.8), wanted.at("runs_for_80_percent"), 1e-4);
}

// Each run's own curve by least squares, as nls has it: then the mean over the media of the blades'
// differences is what emmeans makes of the crossed table.
TEST_P(Classical, EffectsOfTheBladesAreThoseOfEmmeans) {
  const Numbers wanted = answered(GetParam());
  if (!wanted.contains("blade_effect_2")) GTEST_SKIP() << "not crossed, or nls reached no fit";
  const blunting::BluntingData data = data_of(GetParam());
  std::map<std::string, std::map<std::string, std::vector<double>>> lives;  // by blade, by medium
  for (const blunting::RunData& run : data.runs) {
    const trials::Arm& arm = data.arms[run.arm];
    lives[arm.blade][arm.medium.name].push_back(own_life(run));
  }
  const auto& control = lives.begin()->second;
  std::size_t number = 1;
  for (const auto& [blade, by_medium] : lives) {
    if (number > 1) {
      double effect = 0;
      for (const auto& [medium, of_runs] : by_medium) {
        effect += numerics::mean_of(of_runs) - numerics::mean_of(control.at(medium));
      }
      effect /= static_cast<double>(by_medium.size());
      EXPECT_NEAR(effect, wanted.at("blade_effect_" + std::to_string(number)), 1e-4) << blade;
    }
    ++number;
  }
}

INSTANTIATE_TEST_SUITE_P(Trials, Classical, testing::ValuesIn(trial_names()), [](const auto& one) {
  return one.param;
});

}  // namespace
}  // namespace keenfall::agreement
