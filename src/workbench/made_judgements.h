// What judge_tables makes on its way: each judgement with the fit it came from, and from both kinds
// of fit the comparisons of edges read with edges only tested.
#pragma once

#include "base/seed.h"
#include "blunting/inference/model_spec.h"
#include "trials/trial.h"
#include "verdicts/judge_lives.h"
#include "verdicts/judgement.h"
#include "workbench/fitted_trial.h"

#include <optional>
#include <span>
#include <vector>

namespace keenfall::workbench {

struct JudgedCurves {
  const FittedCurves* fitted = nullptr;  // outlives this
  verdicts::Judgement judgement;
};

struct JudgedLives {
  const FittedLives* fitted = nullptr;  // likewise
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
