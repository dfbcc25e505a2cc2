#include "trust/measuring/cell_sums.h"

#include "trust/measuring/answered.h"
#include "trust/measuring/rivals.h"
#include "verdicts/lasting.h"

#include <cmath>

namespace keenfall::trust {

namespace {

using numerics::Interval;

bool holds(const Interval& interval, double truth) {
  return interval.lo95 <= truth && truth <= interval.hi95;
}

// The true log ratio where the rules compared the pair.
double true_log_ratio(const CellTrial& trial, const verdicts::At& at) {
  const bool reading = at.what == verdicts::ComparedAt::common_reading;
  if (!reading || !trial.true_a.curve) {
    return trial.true_a.log_half_cuts - trial.true_b.log_half_cuts;
  }
  return log_cuts_to_reading(*trial.true_a.curve, std::log(at.reading)) -
         log_cuts_to_reading(*trial.true_b.curve, std::log(at.reading));
}

double width_of(const Interval& interval) { return interval.hi95 - interval.lo95; }

void count_answer(Sums& sums, const CellTrial& trial, const PairAnswer& answer) {
  using enum verdicts::Verdict;
  const TrueBlade& a = trial.true_a;
  const TrueBlade& b = trial.true_b;
  add(sums, counted::kCoversHalf, holds(answer.half, a.log_half_cuts - b.log_half_cuts) ? 1 : 0);
  add(sums,
      counted::kCoversLevel,
      holds(answer.level, a.log_level_cuts - b.log_level_cuts) ? 1 : 0);
  add(sums, counted::kCoversLevelOfA, holds(answer.level_a, a.log_level_cuts) ? 1 : 0);
  const double truth = std::exp(true_log_ratio(trial, answer.at));
  const bool covers = answer.decides.lo95 <= truth && truth <= answer.decides.hi95;
  add(sums, counted::kCoversDeciding, covers ? 1 : 0);
  const bool same = answer.verdict == practically_the_same;
  add(sums, counted::kTheSame, same ? 1 : 0);
  add(sums, counted::kLongerOrShorter, same || answer.verdict == not_settled ? 0 : 1);
  add(sums, counted::kLogWidth, width_of(answer.half));
}

void count_rival(Sums& sums,
                 std::string_view rival,
                 double truth,
                 const std::optional<LogBounds>& bounds,
                 const std::optional<PairAnswer>& answer) {
  const std::string name(rival);
  const bool covers = bounds && bounds->lo <= truth && truth <= bounds->hi;
  add(sums, name + std::string(counted::kRivalCovers), covers ? 1 : 0);
  if (!bounds || !answer) return;
  const double wider = std::log(width_of(answer->half) / (bounds->hi - bounds->lo));
  add(sums, name + std::string(counted::kBothAnswered));
  add(sums, name + std::string(counted::kWider), wider);
  add(sums, name + std::string(counted::kWiderSquared), wider * wider);
}

void count_trial(Sums& sums, const CellTrial& trial, const std::optional<PairAnswer>& answer) {
  add(sums, counted::kTrials);
  add(sums, counted::kUnusable, answer ? 0 : 1);
  if (answer) count_answer(sums, trial, *answer);
}

double true_half_ratio(const CellTrial& trial) {
  return trial.true_a.log_half_cuts - trial.true_b.log_half_cuts;
}

void count_both(Sums& sums,
                const CellTrial& trial,
                const PairAnswer& full,
                const PairAnswer& quick) {
  const double truth = true_half_ratio(trial);
  const bool by_full = holds(full.half, truth);
  const bool by_quick = holds(quick.half, truth);
  add(sums, counted::kAgree, full.verdict == quick.verdict ? 1 : 0);
  add(sums, counted::kFullAlone, by_full && !by_quick ? 1 : 0);
  add(sums, counted::kQuickAlone, by_quick && !by_full ? 1 : 0);
  count_rival(
      sums, kQuickEngine, truth, LogBounds{.lo = quick.half.lo95, .hi = quick.half.hi95}, full);
}

}  // namespace

Sums quick_sums(const Cell& cell, TrueRatio ratio, const Batch& batch) {
  Sums sums;
  for (int t = 0; t < batch.trials; ++t) {
    const CellTrial trial = cell_trial(cell, ratio, batch.first + static_cast<std::uint64_t>(t));
    const auto answer = quick_answer(trial);
    count_trial(sums, trial, answer);
    for (const Rival& rival : kRivals) {
      count_rival(sums, rival.name, true_half_ratio(trial), rival.answer(trial), answer);
    }
  }
  return sums;
}

Sums full_sums(const Cell& cell, TrueRatio ratio, const Batch& batch) {
  Sums sums;
  for (int t = 0; t < batch.trials; ++t) {
    const std::uint64_t number = batch.first + static_cast<std::uint64_t>(t);
    const CellTrial trial = cell_trial(cell, ratio, number);
    const auto full = full_answer(trial, number + 1);
    const auto quick = quick_answer(trial);
    count_trial(sums, trial, full);
    if (full && quick) count_both(sums, trial, *full, *quick);
  }
  return sums;
}

}  // namespace keenfall::trust
