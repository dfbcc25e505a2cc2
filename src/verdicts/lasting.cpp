#include "verdicts/lasting.h"

#include "blunting/curves/log_logistic.h"
#include "numerics/summaries.h"

#include <algorithm>
#include <cmath>

namespace keenfall::verdicts {

namespace {

double log_bluntness_at(const blunting::BluntingData& data, const At& at) {
  const double log_reading = std::log(at.reading);
  return data.higher_is_keener() ? -log_reading : log_reading;
}

}  // namespace

blunting::Draws log_cuts_until(const blunting::BluntingData& data,
                               const blunting::BluntingFit& fit,
                               std::size_t arm,
                               const At& at,
                               ClaimAbout claim) {
  return log_cuts_until(data, fit.arms.at(arm), at, claim);
}

blunting::Draws log_cuts_until(const blunting::BluntingData& data,
                               const blunting::ArmDraws& draws,
                               const At& at,
                               ClaimAbout claim) {
  const blunting::Draws& half =
      claim == ClaimAbout::the_steels ? draws.log_half_keenness_steel : draws.log_half_keenness;
  const double none = log_of_no_cuts(data);
  blunting::Draws log_cuts;
  log_cuts.reserve(half.size());
  for (std::size_t d = 0; d < half.size(); ++d) {
    log_cuts.push_back(
        std::max(none, log_cuts_until(data, {draws.log_start[d], half[d], draws.shape[d]}, at)));
  }
  return log_cuts;
}

double log_cuts_until(const blunting::BluntingData& data,
                      const blunting::LogLogistic& curve,
                      const At& at) {
  return at.what == ComparedAt::common_reading
             ? log_cuts_to_reading(curve, log_bluntness_at(data, at))
             : log_cuts_to_level(curve, at.level);
}

double log_of_no_cuts(const blunting::BluntingData& data) {
  double first = HUGE_VAL;
  for (const blunting::RunData& run : data.runs) {
    for (const blunting::Checkpoint& checkpoint : run.checkpoints) {
      if (checkpoint.cuts > 0) first = std::min(first, checkpoint.log_cuts);
    }
  }
  constexpr double kFarBefore = 1e-6;  // of the first checkpoint
  return (std::isfinite(first) ? first : 0) + std::log(kFarBefore);
}

double longest_run_cuts(const blunting::BluntingData& data, std::size_t arm) {
  double longest = 0;
  for (const blunting::RunData& run : data.runs) {
    if (run.arm == arm) longest = std::max(longest, run.checkpoints.back().cuts);
  }
  return longest;
}

bool run_reached(const blunting::BluntingData& data,
                 const blunting::BluntingFit& fit,
                 std::size_t run,
                 const At& at) {
  const double wanted = at.what == ComparedAt::common_reading
                            ? log_bluntness_at(data, at)
                            : fit.runs[run].log_start_median + std::log(at.level);
  return std::ranges::any_of(
      data.runs[run].checkpoints, [wanted](const blunting::Checkpoint& checkpoint) {
        return !checkpoint.below_resolution && checkpoint.log_bluntness >= wanted;
      });
}

CutsToLevel cuts_until(const blunting::BluntingData& data,
                       const blunting::BluntingFit& fit,
                       std::size_t arm,
                       const At& at) {
  CutsToLevel until{.cuts = numerics::exp_of(numerics::interval_of(
                        log_cuts_until(data, fit, arm, at, ClaimAbout::these_blades)))};
  until.beyond_what_was_cut = until.cuts.median > longest_run_cuts(data, arm);
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    if (data.runs[r].arm == arm && run_reached(data, fit, r, at)) ++until.runs_that_reached;
  }
  return until;
}

}  // namespace keenfall::verdicts
