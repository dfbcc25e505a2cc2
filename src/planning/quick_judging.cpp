#include "planning/quick_judging.h"

#include "blunting/quick/quick_fit.h"
#include "numerics/summaries.h"
#include "verdicts/compare.h"
#include "verdicts/compared_at.h"
#include "verdicts/family.h"
#include "verdicts/simultaneous.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>
#include <vector>

namespace keenfall::planning {

namespace {

using verdicts::ClaimAbout;
using verdicts::Family;
using verdicts::LastingArm;

// A claim about steels needs several specimens on both sides.
ClaimAbout claim_on(const LastingArm& a, const LastingArm& b) {
  return a.carries_steel && b.carries_steel ? ClaimAbout::the_steels : ClaimAbout::these_blades;
}

// Draws of the log ratio of every pair of arms; the pair that is asked for first, the right way
// round.
std::vector<blunting::Draws> log_ratios_of(const Family& family, std::size_t a, std::size_t b) {
  const auto draws = [&family](std::size_t one, std::size_t other) {
    return log_ratio_of(family, one, other, claim_on(family.arms[one], family.arms[other]));
  };
  std::vector<blunting::Draws> log_ratios{draws(a, b)};
  for (const verdicts::Pair& pair : verdicts::all_pairs(family.arms.size())) {
    if (std::minmax(pair.one, pair.other) == std::minmax(a, b)) continue;
    log_ratios.push_back(draws(pair.one, pair.other));
  }
  return log_ratios;
}

}  // namespace

std::optional<QuickRatio> quick_ratio(const trials::Trial& trial,
                                      const blunting::SeriesKey& key,
                                      const verdicts::Question& question,
                                      const AskedPair& pair) {
  const blunting::ModelSpec spec = blunting::default_model();
  const auto data = blunting::prepare(trial, key, spec.errors);
  if (!data) return std::nullopt;
  const auto place_of = [&data](const trials::Arm& arm) {
    return static_cast<std::size_t>(std::ranges::find(data->arms, arm) - data->arms.begin());
  };
  const std::size_t a = place_of(pair.a);
  const std::size_t b = place_of(pair.b);
  if (a >= data->arms.size() || b >= data->arms.size()) return std::nullopt;
  const blunting::BluntingFit fit = blunting::quick_draws(*data, spec);
  std::vector<std::size_t> arms(data->arms.size());
  std::iota(arms.begin(), arms.end(), std::size_t{0});
  const verdicts::At at = compared_at(question, *data, fit, arms).at;
  const auto log_ratios =
      log_ratios_of(family_of_curves(*data, fit, arms, at, question.claim), a, b);
  const QuickRatio ratio{.median = std::exp(numerics::median_of(log_ratios.front())),
                         .bounds = verdicts::simultaneous_bounds(log_ratios).front()};
  const bool is_usable =
      std::isfinite(ratio.bounds.lo95) && std::isfinite(ratio.bounds.hi95) && ratio.bounds.lo95 > 0;
  return is_usable ? std::optional(ratio) : std::nullopt;
}

}  // namespace keenfall::planning
