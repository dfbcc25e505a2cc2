// Simulated trials judged, and the judgement held to the truth that the simulator alone knows. Of
// tests alone.
#pragma once

#include "wear/simulated_trial.h"
#include "workbench/judge_tables.h"
#include "workbench/work_words.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

namespace keenfall::workbench::testing {

enum class Stock { clean, gritty, mixed };

inline wear::WorkPlan stock_of(Stock stock) {
  const ApexCatalogue catalogue = apex_catalogue({}).value();
  switch (stock) {
    case Stock::clean:
      return wear::work_in(find_medium(catalogue, "new sisal matting").value());
    case Stock::gritty:
      return wear::work_in(find_medium(catalogue, "uplifted sisal matting").value());
    case Stock::mixed:
      break;
  }
  return work_in_words("9 new sisal matting, 1 uplifted sisal matting", catalogue).value();
}

// A rich steel against a plain one, six runs each, as a careful bench would do it.
inline wear::TrialPlan bench_trial(const wear::WorkPlan& work, std::uint64_t seed) {
  const ApexCatalogue catalogue = apex_catalogue({}).value();
  return {
      .steels = {find_steel(catalogue, "AISI A11").value(), find_steel(catalogue, "75Ni8").value()},
      .works = {work},
      .edges = {{.finish_name = "fine", .finish = wear::fine_finish()}},
      .repeats = 5,
      .seed = {seed}};
}

struct HeldToTheTruth {
  bool usable = false;
  bool covers = false;       // the 95 % interval of the pair holds the simulator's ratio
  bool wrong_order = false;  // settled, and the other lasts longer
  bool settled = false;
  bool curve_passed = true;
  double log_error = 0;  // log of the ratio found over the true one
};

// Does the verdict say which lasts longer, and is that a?
inline bool says_longer(verdicts::Verdict verdict) {
  using enum verdicts::Verdict;
  return verdict == longer || verdict == longer_and_worth_having ||
         verdict == longer_but_too_little_to_matter;
}

inline HeldToTheTruth held_to_the_truth(const wear::TrialPlan& plan) {
  const auto made = wear::simulated_trial(plan, base::threads(2)).value();
  const auto judgements = judge_trial(made.trial, {}, base::threads(2), base::unwatched()).value();
  const verdicts::Judgement& judged = judgements.front();
  HeldToTheTruth held{.usable = judged.fit.usable, .curve_passed = judged.curve_check.passed};
  if (!judged.fit.usable) return held;
  const verdicts::Comparison& found = judged.comparisons.front();
  const wear::RatioTruth& truth = made.ratios.front();
  const bool same_way = judged.arms[found.a].arm.blade == made.arms[truth.a].arm.blade;
  const double ratio = same_way ? truth.ratio : 1 / truth.ratio;
  held.covers = found.ratio.lo95 <= ratio && ratio <= found.ratio.hi95;
  held.settled = says_longer(found.verdict);
  held.wrong_order = held.settled && ratio < 1;
  held.log_error = std::log(found.ratio.median / ratio);
  return held;
}

}  // namespace keenfall::workbench::testing
