#include "trust/measuring/answered.h"

#include "blunting/quick/quick_fit.h"
#include "numerics/summaries.h"
#include "verdicts/compare.h"
#include "verdicts/lasting.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace keenfall::trust {

namespace {

using blunting::BluntingData;
using blunting::BluntingFit;
using verdicts::At;
using verdicts::ClaimAbout;
using verdicts::ComparedAt;

blunting::Draws log_cuts(const BluntingData& data,
                         const BluntingFit& fit,
                         std::size_t arm,
                         double level) {
  return log_cuts_until(
      data, fit, arm, At{.what = ComparedAt::level, .level = level}, ClaimAbout::these_blades);
}

numerics::Interval log_ratio(blunting::Draws a, const blunting::Draws& b) {
  for (std::size_t d = 0; d < a.size(); ++d) a[d] -= b[d];
  return numerics::interval_of(std::move(a));
}

// Bounds of B over A as bounds of A over B.
verdicts::RatioBounds turned(const verdicts::RatioBounds& bounds) {
  return {.lo90 = 1 / bounds.hi90,
          .hi90 = 1 / bounds.lo90,
          .lo95 = 1 / bounds.hi95,
          .hi95 = 1 / bounds.lo95};
}

bool is_finite(const PairAnswer& answer) {
  return std::isfinite(answer.half.lo95) && std::isfinite(answer.half.hi95) &&
         std::isfinite(answer.level.lo95) && std::isfinite(answer.level.hi95);
}

}  // namespace

std::optional<PairAnswer> answer_of(const CellTrial& trial,
                                    const BluntingData& data,
                                    const BluntingFit& fit) {
  const auto pairs = verdicts::compare_all(
      trial.trial, data, fit, {.worth_it_margin = trial.margin}, base::Seed{1});
  const auto pair = std::ranges::find_if(pairs, [&](const verdicts::Comparison& each) {
    return data.arms[each.a].medium.name == trial.medium;
  });
  if (pair == pairs.end()) return std::nullopt;
  const bool a_first = data.arms[pair->a].blade == trial.a;
  const std::size_t a = a_first ? pair->a : pair->b;
  const std::size_t b = a_first ? pair->b : pair->a;
  const blunting::Draws level_a = log_cuts(data, fit, a, kLevel);
  PairAnswer answer{.half = log_ratio(log_cuts(data, fit, a, 2), log_cuts(data, fit, b, 2)),
                    .level = log_ratio(level_a, log_cuts(data, fit, b, kLevel)),
                    .level_a = numerics::interval_of(level_a),
                    .at = pair->at,
                    .decides = a_first ? pair->simultaneous : turned(pair->simultaneous)};
  answer.verdict = verdict_on(answer.decides, trial.margin);
  if (!is_finite(answer)) return std::nullopt;
  return answer;
}

std::optional<PairAnswer> quick_answer(const CellTrial& trial) {
  const blunting::ModelSpec spec = blunting::default_model();
  const auto data = blunting::prepare(trial.trial, trial.key, spec.errors);
  if (!data) return std::nullopt;
  return answer_of(trial, *data, blunting::quick_draws(*data, spec));
}

std::optional<PairAnswer> full_answer(const CellTrial& trial, std::uint64_t seed) {
  const blunting::ModelSpec spec = blunting::default_model();
  const auto data = blunting::prepare(trial.trial, trial.key, spec.errors);
  if (!data) return std::nullopt;
  const auto fit = blunting::fit_blunting(
      *data, spec, blunting::sampling_for(*data), {seed}, base::one_thread(), base::unwatched());
  if (!fit || !fit->diagnostics.usable) return std::nullopt;
  return answer_of(trial, *data, *fit);
}

}  // namespace keenfall::trust
