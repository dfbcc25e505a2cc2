#include "verdicts/family.h"

#include "base/require.h"
#include "numerics/summaries.h"
#include "verdicts/also_differs.h"
#include "verdicts/further_runs.h"
#include "verdicts/look_report.h"
#include "verdicts/planned_looks.h"
#include "verdicts/simultaneous.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <optional>
#include <utility>

namespace keenfall::verdicts {

namespace {

using blunting::Draws;

// A claim about steels needs several specimens on both sides.
ClaimAbout claim_of(const LastingArm& one, const LastingArm& other) {
  return one.carries_steel && other.carries_steel ? ClaimAbout::the_steels
                                                  : ClaimAbout::these_blades;
}

Draws difference_of(const LastingArm& a, const LastingArm& b, ClaimAbout claim) {
  const bool of_steels = claim == ClaimAbout::the_steels;
  Draws difference = of_steels ? a.log_cuts_steel : a.log_cuts;
  const Draws& below = of_steels ? b.log_cuts_steel : b.log_cuts;
  base::require(difference.size() == below.size(), "the arms of a family have as many draws each");
  for (std::size_t d = 0; d < difference.size(); ++d) difference[d] -= below[d];
  return difference;
}

double share_above(const Draws& draws, double bound) {
  const auto count = std::ranges::count_if(draws, [bound](double d) { return d > bound; });
  return static_cast<double>(count) / static_cast<double>(draws.size());
}

// The bounds of the whole family from each half of a chain by itself: [half][comparison]. Found
// once for the family, since the bounds of one comparison need the draws of all.
std::vector<std::vector<RatioBounds>> bounds_by_batch(const std::vector<Draws>& family,
                                                      std::size_t batches) {
  const std::size_t length = family.front().size() / batches;
  std::vector<std::vector<RatioBounds>> bounds;
  for (std::size_t b = 0; b < batches; ++b) {
    std::vector<Draws> part;
    for (const Draws& draws : family) {
      const auto first = draws.begin() + static_cast<std::ptrdiff_t>(b * length);
      part.push_back({first, first + static_cast<std::ptrdiff_t>(length)});
    }
    bounds.push_back(simultaneous_bounds(part));
  }
  return bounds;
}

// Monte-Carlo standard errors of the log bounds of one comparison, from the spread over batches.
RatioBounds log_errors_of_bounds(const std::vector<std::vector<RatioBounds>>& by_batch,
                                 std::size_t which) {
  const auto error = [&](double RatioBounds::*bound) {
    std::vector<double> logs;
    for (const std::vector<RatioBounds>& family : by_batch) {
      logs.push_back(std::log(family[which].*bound));
    }
    return std::sqrt(numerics::variance_of(logs) / static_cast<double>(by_batch.size()));
  };
  return {.lo90 = error(&RatioBounds::lo90),
          .hi90 = error(&RatioBounds::hi90),
          .lo95 = error(&RatioBounds::lo95),
          .hi95 = error(&RatioBounds::hi95)};
}

// Would the verdict change if any one bound moved by two Monte-Carlo errors?
bool is_near_boundary(const RatioBounds& bounds, const RatioBounds& log_errors, double margin) {
  constexpr double kErrors = 2;
  const Verdict now = verdict_on(bounds, margin);
  constexpr std::array kBounds{
      &RatioBounds::lo90, &RatioBounds::hi90, &RatioBounds::lo95, &RatioBounds::hi95};
  for (const auto bound : kBounds) {
    for (const double direction : {-1.0, 1.0}) {
      RatioBounds moved = bounds;
      moved.*bound *= std::exp(direction * kErrors * (log_errors.*bound));
      if (verdict_on(moved, margin) != now) return true;
    }
  }
  return false;
}

FurtherRuns further_runs_for(const Comparison& pair,
                             const Draws& log_ratio,
                             const Family& family,
                             const Pair& places,
                             double margin) {
  return {.runs_each = further_runs_to_settle(
              {.log_ratio = std::log(pair.ratio.median),
               .log_ratio_sd = std::sqrt(numerics::variance_of(log_ratio)),
               .half_width_90 = 0.5 * std::log(pair.simultaneous.hi90 / pair.simultaneous.lo90),
               .half_width_95 = 0.5 * std::log(pair.simultaneous.hi95 / pair.simultaneous.lo95),
               .runs_a = family.arms[places.one].runs,
               .runs_b = family.arms[places.other].runs,
               .worth_it_margin = margin})};
}

// Errors of bounds in logs, stretched as the bounds are.
RatioBounds stretched_errors(const RatioBounds& errors, const LookStretch& stretch) {
  return {.lo90 = errors.lo90 * stretch.at_90,
          .hi90 = errors.hi90 * stretch.at_90,
          .lo95 = errors.lo95 * stretch.at_95,
          .hi95 = errors.hi95 * stretch.at_95};
}

std::optional<LookReport> look_at(const Family& family, const FamilyQuestion& question) {
  if (question.looks.empty()) return std::nullopt;
  std::vector<int> runs;
  for (const LastingArm& arm : family.arms) runs.push_back(arm.runs);
  return look_report(runs, question.looks, question.seed);
}

// The pairs with the longer-lasting arm first, and the draws of their log ratios.
struct OrderedPairs {
  std::vector<Pair> pairs;
  std::vector<ClaimAbout> claims;
  std::vector<Draws> log_ratios;
};

OrderedPairs in_order_of_lasting(const Family& family, std::span<const Pair> pairs) {
  OrderedPairs ordered;
  for (const Pair& pair : pairs) {
    const LastingArm& one = family.arms.at(pair.one);
    const LastingArm& other = family.arms.at(pair.other);
    const ClaimAbout claim = claim_of(one, other);
    Draws log_ratio = difference_of(one, other, claim);
    const bool turned = numerics::median_of(log_ratio) < 0;
    if (turned) std::ranges::transform(log_ratio, log_ratio.begin(), std::negate<>());
    ordered.pairs.push_back(turned ? Pair{pair.other, pair.one} : pair);
    ordered.claims.push_back(claim);
    ordered.log_ratios.push_back(std::move(log_ratio));
  }
  return ordered;
}

const LastingArm& arm_at(const Family& family, std::size_t index) {
  const auto found = std::ranges::find(family.arms, index, &LastingArm::index);
  base::require(found != family.arms.end(), "the arm belongs to the family");
  return *found;
}

}  // namespace

std::vector<Pair> all_pairs(std::size_t arms) {
  std::vector<Pair> pairs;
  for (std::size_t i = 0; i < arms; ++i) {
    for (std::size_t j = i + 1; j < arms; ++j) pairs.push_back({.one = i, .other = j});
  }
  return pairs;
}

Draws log_ratio_of(const Family& family, std::size_t a, std::size_t b, ClaimAbout claim) {
  return difference_of(arm_at(family, a), arm_at(family, b), claim);
}

void add_ratio_at_level(std::span<Comparison> comparisons, const Family& family) {
  for (Comparison& pair : comparisons) {
    const Draws log_ratio = log_ratio_of(family, pair.a, pair.b, pair.claim_about);
    pair.ratio_by_level.push_back(
        {.level = family.at.level,
         .ratio = numerics::exp_of(numerics::interval_of(log_ratio)),
         .beyond_what_was_cut = arm_at(family, pair.a).beyond_what_was_cut ||
                                arm_at(family, pair.b).beyond_what_was_cut});
  }
}

std::vector<Comparison> compare_family(const trials::Trial& trial,
                                       const Family& family,
                                       std::span<const Pair> pairs,
                                       const FamilyQuestion& question) {
  std::vector<Comparison> comparisons;
  if (pairs.empty()) return comparisons;
  const double margin = question.worth_it_margin;
  const std::optional<LookReport> look = look_at(family, question);
  const LookStretch stretch =
      look ? LookStretch{.at_95 = look->stretch_95, .at_90 = look->stretch_90} : LookStretch{};
  const OrderedPairs ordered = in_order_of_lasting(family, pairs);
  const std::vector<RatioBounds> together = simultaneous_bounds(ordered.log_ratios);
  const auto by_batch = bounds_by_batch(ordered.log_ratios, family.batches);
  for (std::size_t c = 0; c < pairs.size(); ++c) {
    const Draws& log_ratio = ordered.log_ratios[c];
    const LastingArm& a = family.arms[ordered.pairs[c].one];
    const LastingArm& b = family.arms[ordered.pairs[c].other];
    Comparison pair{.a = a.index, .b = b.index, .at = family.at, .claim_about = ordered.claims[c]};
    pair.ratio = numerics::exp_of(numerics::interval_of(log_ratio));
    if (pair.claim_about == ClaimAbout::the_steels) {
      pair.ratio_these_blades =
          numerics::exp_of(numerics::interval_of(difference_of(a, b, ClaimAbout::these_blades)));
    }
    pair.simultaneous = stretched(together[c], pair.ratio.median, stretch);
    pair.look = look;
    pair.family_size = static_cast<int>(pairs.size());
    pair.probability_longer = share_above(log_ratio, 0);
    pair.probability_worth_having = share_above(log_ratio, std::log(margin));
    pair.verdict = verdict_on(pair.simultaneous, margin);
    pair.single_verdict =
        verdict_on(stretched(bounds_of(pair.ratio), pair.ratio.median, stretch), margin);
    pair.near_boundary = is_near_boundary(
        pair.simultaneous, stretched_errors(log_errors_of_bounds(by_batch, c), stretch), margin);
    pair.beyond_what_was_cut = a.beyond_what_was_cut || b.beyond_what_was_cut;
    if (!is_settled(pair.verdict)) {
      pair.further_runs = further_runs_for(pair, log_ratio, family, ordered.pairs[c], margin);
    }
    pair.also_differs = what_else_differs(trial, {a.arm, b.arm}, question.told_in);
    if (look) pair.remarks.push_back(in_words(*look));
    comparisons.push_back(std::move(pair));
  }
  return comparisons;
}

}  // namespace keenfall::verdicts
