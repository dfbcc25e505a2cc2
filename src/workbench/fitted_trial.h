// A trial with its fits: what is judged from, and judged again for another margin, level or claim
// without fitting anew.
//
// In: a trial, which of its readings, by which model, from which seed, and by which engine. Out:
// the data and draws of each kind of reading and thread, the one with most readings first, and of
// each pass-or-fail test; at least one. Fails where nothing can be fitted, or with a problem of
// kind `interrupted` when the progress report asked to stop. The quick engine takes some
// milliseconds, draws without chance and cannot be stopped.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "blunting/inference/model_spec.h"
#include "blunting/times/time_data.h"
#include "blunting/times/time_fit.h"
#include "trials/trial.h"
#include "verdicts/described_curves.h"
#include "workbench/judge_options.h"

#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::workbench {

// Curves and their draws in one unit, with what they say there whatever is asked of them.
struct ToldCurves {
  blunting::BluntingData data;
  blunting::BluntingFit fit;
  verdicts::DescribedCurves described;
};

// The same fit in the unit it was last told in. Used from several threads.
class ToldOtherwise {
 public:
  // `unit`: of the dimension of the recorded one.
  [[nodiscard]] std::shared_ptr<const ToldCurves> in(const std::string& unit,
                                                     const trials::Trial& trial,
                                                     const ToldCurves& recorded);

 private:
  std::mutex mutex_;
  std::shared_ptr<const ToldCurves> last_;
};

struct FittedCurves {
  blunting::SeriesKey key;
  ToldCurves recorded;     // in the unit of the readings
  double cpu_seconds = 0;  // that the fit took
  std::shared_ptr<ToldOtherwise> otherwise = std::make_shared<ToldOtherwise>();
};

struct FittedLives {
  blunting::TestKey test;
  blunting::TimeData data;
  blunting::TimeFit fit;
  double cpu_seconds = 0;
};

enum class Engine { quick, full };

// What is not shared with the caller is copied only where a level of its test is added.
struct FittedTrial {
  std::shared_ptr<const trials::Trial> trial;
  Engine engine = Engine::full;
  blunting::ModelSpec model;
  std::vector<FittedCurves> curves;
  std::vector<FittedLives> lives;
  std::vector<base::Problem> not_judged;  // kinds without a usable run
};

// Of the options those count that choose the readings and the model: model, kind, rung, test_level
// and the seed.
[[nodiscard]] base::ResultOrProblems<FittedTrial> fit_trial(
    const std::shared_ptr<const trials::Trial>& trial,
    const JudgeOptions& options,
    Engine engine,
    const base::Executor& executor,
    const base::ProgressReport& progress);

}  // namespace keenfall::workbench
