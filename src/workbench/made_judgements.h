// What judge_tables makes on its way: each judgement with the fit it came from, and from both kinds
// of fit the comparisons of edges read with edges only tested.
#pragma once

#include "base/seed.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "blunting/inference/model_spec.h"
#include "blunting/times/time_data.h"
#include "blunting/times/time_fit.h"
#include "trials/trial.h"
#include "verdicts/judge_lives.h"
#include "verdicts/judgement.h"

#include <optional>
#include <span>
#include <vector>

namespace keenfall::workbench {

struct JudgedCurves {
  blunting::BluntingData data;
  blunting::BluntingFit fit;
  verdicts::Judgement judgement;
};

struct JudgedLives {
  blunting::TimeData data;
  blunting::TimeFit fit;
  verdicts::Judgement judgement;
};

// The trial, where every life that does not say what failing means on a curve is given this level.
[[nodiscard]] trials::Trial with_test_level(trials::Trial trial, double level);

struct BothWays {
  const trials::Trial& trial;
  std::span<const JudgedCurves> curves;  // the kind with most readings first
  const blunting::ModelSpec& model;
  std::optional<double> test_level;  // as JudgeOptions::test_level
};

// One judgement for each test whose level is known and of which some edges were tested only, others
// read in the same medium. Where only the level stands in the way, the test's judgement says what
// to state; where a level was given for nothing, too.
[[nodiscard]] std::vector<verdicts::Judgement> read_against_tested(
    const BothWays& ways,
    std::span<JudgedLives> tests,
    const verdicts::LivesQuestion& question,
    base::Seed seed);

}  // namespace keenfall::workbench
