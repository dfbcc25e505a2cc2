#include "verdicts/runs_compared.h"

#include "numerics/summaries.h"
#include "verdicts/lasting.h"

#include <algorithm>
#include <utility>

namespace keenfall::verdicts {

At where_compared(const Judgement& judgement, std::size_t arm) {
  const auto pair = std::ranges::find_if(judgement.comparisons, [arm](const Comparison& each) {
    return each.a == arm || each.b == arm;
  });
  if (pair != judgement.comparisons.end()) return pair->at;
  return {.what = judgement.test ? ComparedAt::test : ComparedAt::half_keenness};
}

void put_compared_cuts(RunResult& result,
                       const blunting::BluntingData& data,
                       const blunting::BluntingFit& fit,
                       std::size_t run,
                       const At& at) {
  // A run has a start and a half keenness of its own, and its arm's shape.
  const blunting::RunDraws& own = fit.runs[run];
  blunting::Draws log_cuts =
      log_cuts_until(data,
                     blunting::ArmDraws{.log_start = own.log_start,
                                        .log_half_keenness = own.log_half_keenness,
                                        .log_half_keenness_steel = {},
                                        .shape = fit.arms[data.runs[run].arm].shape},
                     at,
                     ClaimAbout::these_blades);
  result.compared_cuts = numerics::exp_of(numerics::interval_of(std::move(log_cuts)));
  result.stopped_before_compared = !run_reached(data, fit, run, at);
}

}  // namespace keenfall::verdicts
