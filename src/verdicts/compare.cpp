#include "verdicts/compare.h"

#include "numerics/summaries.h"
#include "verdicts/also_differs.h"
#include "verdicts/compared_at.h"
#include "verdicts/further_runs.h"
#include "verdicts/lasting.h"
#include "verdicts/look_report.h"
#include "verdicts/planned_looks.h"
#include "verdicts/simultaneous.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace keenfall::verdicts {

namespace {

using blunting::BluntingData;
using blunting::BluntingFit;
using blunting::Draws;

constexpr std::array kLevelsDrawn{1.25, 1.5, 2.0, 3.0, 4.0, 6.0};

int runs_of(const BluntingData& data, std::size_t arm) {
  return static_cast<int>(std::ranges::count(data.runs, arm, &blunting::RunData::arm));
}

int specimens_of(const BluntingData& data, std::size_t arm) {
  std::set<std::size_t> pieces;
  for (const auto& run : data.runs) {
    if (run.arm == arm && run.specimen) pieces.insert(*run.specimen);
  }
  return std::max(1, static_cast<int>(pieces.size()));
}

// A claim about steels needs several specimens on both sides.
ClaimAbout claim_of(const BluntingData& data,
                    const BluntingFit& fit,
                    const Question& question,
                    const Comparison& pair) {
  const bool several = specimens_of(data, pair.a) > 1 && specimens_of(data, pair.b) > 1;
  const bool wanted = question.claim != ClaimAbout::these_blades;
  return wanted && fit.parts.specimens && several ? ClaimAbout::the_steels
                                                  : ClaimAbout::these_blades;
}

Draws log_ratio_of(const BluntingData& data,
                   const BluntingFit& fit,
                   const Comparison& pair,
                   const At& at) {
  Draws ratio = log_cuts_until(data, fit, pair.a, at, pair.claim_about);
  const Draws below = log_cuts_until(data, fit, pair.b, at, pair.claim_about);
  for (std::size_t d = 0; d < ratio.size(); ++d) ratio[d] -= below[d];
  return ratio;
}

// Beside a claim about the steels: the same ratio of the pieces that were cut with.
std::optional<numerics::Interval> ratio_beside(const BluntingData& data,
                                               const BluntingFit& fit,
                                               Comparison pair,
                                               const At& at) {
  if (pair.claim_about == ClaimAbout::these_blades) return std::nullopt;
  pair.claim_about = ClaimAbout::these_blades;
  return numerics::exp_of(numerics::interval_of(log_ratio_of(data, fit, pair, at)));
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
                             const BluntingData& data,
                             double margin) {
  int freedom = 0;
  std::set<std::size_t> arms;
  for (const auto& run : data.runs) {
    if (run.medium != data.medium_of_arm[pair.a]) continue;
    ++freedom;
    arms.insert(run.arm);
  }
  freedom -= static_cast<int>(arms.size());
  return {.runs_each = further_runs_to_settle(
              {.log_ratio = std::log(pair.ratio.median),
               .log_ratio_sd = std::sqrt(numerics::variance_of(log_ratio)),
               .half_width_90 = 0.5 * std::log(pair.simultaneous.hi90 / pair.simultaneous.lo90),
               .half_width_95 = 0.5 * std::log(pair.simultaneous.hi95 / pair.simultaneous.lo95),
               .runs_a = runs_of(data, pair.a),
               .runs_b = runs_of(data, pair.b),
               .scatter_degrees_of_freedom = std::max(1, freedom),
               .worth_it_margin = margin})};
}

std::vector<RatioAtLevel> ratios_by_level(const BluntingData& data,
                                          const BluntingFit& fit,
                                          const Comparison& pair) {
  std::vector<RatioAtLevel> ratios;
  for (const double level : kLevelsDrawn) {
    const At at{.what = ComparedAt::level, .level = level};
    const bool beyond = cuts_until(data, fit, pair.a, at).beyond_what_was_cut ||
                        cuts_until(data, fit, pair.b, at).beyond_what_was_cut;
    ratios.push_back(
        {.level = level,
         .ratio = numerics::exp_of(numerics::interval_of(log_ratio_of(data, fit, pair, at))),
         .beyond_what_was_cut = beyond});
  }
  return ratios;
}

std::vector<Comparison> pairs_of(const BluntingData& data,
                                 const BluntingFit& fit,
                                 const Question& question,
                                 std::span<const std::size_t> arms,
                                 const At& at) {
  std::vector<Comparison> pairs;
  for (std::size_t i = 0; i < arms.size(); ++i) {
    for (std::size_t j = i + 1; j < arms.size(); ++j) {
      Comparison pair{.a = arms[i], .b = arms[j], .at = at};
      pair.claim_about = claim_of(data, fit, question, pair);
      if (numerics::median_of(log_ratio_of(data, fit, pair, at)) < 0) std::swap(pair.a, pair.b);
      pairs.push_back(pair);
    }
  }
  return pairs;
}

void add_remarks(Comparison& pair,
                 const BluntingData& data,
                 const BluntingFit& fit,
                 bool starts_differ) {
  if (starts_differ) {
    pair.remarks.push_back(
        "The edges of this medium start differently, so they are compared at one common reading, "
        "not at half of their own keenness.");
  }
  if (pair.at.what == ComparedAt::common_reading) {
    for (const std::size_t arm : {pair.a, pair.b}) {
      const CutsToLevel until = cuts_until(data, fit, arm, pair.at);
      if (until.cuts.lo95 <= 1.01 * std::exp(log_of_no_cuts(data))) {
        pair.remarks.push_back(
            "The edge of " + data.arms[arm].blade +
            " may start as blunt as the common reading already; choose a blunter one.");
      }
    }
  }
  const bool crosses = std::ranges::any_of(pair.ratio_by_level,
                                           [](const RatioAtLevel& r) {
                                             return r.ratio.hi95 < 1 && !r.beyond_what_was_cut;
                                           }) &&
                       std::ranges::any_of(pair.ratio_by_level, [](const RatioAtLevel& r) {
                         return r.ratio.lo95 > 1 && !r.beyond_what_was_cut;
                       });
  if (crosses) {
    pair.remarks.push_back(
        "The curves cross: which edge lasts longer depends on how blunt an edge you accept.");
  }
}

// Errors of bounds in logs, stretched as the bounds are.
RatioBounds stretched_errors(const RatioBounds& errors, const LookStretch& stretch) {
  return {.lo90 = errors.lo90 * stretch.at_90,
          .hi90 = errors.hi90 * stretch.at_90,
          .lo95 = errors.lo95 * stretch.at_95,
          .hi95 = errors.hi95 * stretch.at_95};
}

std::optional<LookReport> look_at(const BluntingData& data,
                                  const Question& question,
                                  std::span<const std::size_t> arms,
                                  base::Seed seed) {
  if (question.looks.empty() || arms.size() < 2) return std::nullopt;
  std::vector<int> runs;
  for (const std::size_t arm : arms) runs.push_back(runs_of(data, arm));
  return look_report(runs, question.looks, seed);
}

std::vector<Comparison> compare_family(const trials::Trial& trial,
                                       const BluntingData& data,
                                       const BluntingFit& fit,
                                       const Question& question,
                                       std::span<const std::size_t> arms,
                                       base::Seed seed) {
  const FamilyLevel level = compared_at(question, data, fit, arms);
  std::vector<Comparison> pairs = pairs_of(data, fit, question, arms, level.at);
  if (pairs.empty()) return pairs;
  std::vector<Draws> log_ratios;
  for (const Comparison& pair : pairs)
    log_ratios.push_back(log_ratio_of(data, fit, pair, level.at));
  const std::vector<RatioBounds> together = simultaneous_bounds(log_ratios);
  const auto by_batch = bounds_by_batch(log_ratios, 2 * fit.chains);
  const std::optional<LookReport> look = look_at(data, question, arms, seed);
  const LookStretch stretch =
      look ? LookStretch{.at_95 = look->stretch_95, .at_90 = look->stretch_90} : LookStretch{};
  const double margin = question.worth_it_margin;
  for (std::size_t c = 0; c < pairs.size(); ++c) {
    Comparison& pair = pairs[c];
    pair.ratio = numerics::exp_of(numerics::interval_of(log_ratios[c]));
    pair.ratio_these_blades = ratio_beside(data, fit, pair, level.at);
    pair.simultaneous = stretched(together[c], pair.ratio.median, stretch);
    pair.look = look;
    pair.family_size = static_cast<int>(pairs.size());
    pair.probability_longer = share_above(log_ratios[c], 0);
    pair.probability_worth_having = share_above(log_ratios[c], std::log(margin));
    pair.verdict = verdict_on(pair.simultaneous, margin);
    pair.single_verdict =
        verdict_on(stretched(bounds_of(pair.ratio), pair.ratio.median, stretch), margin);
    pair.near_boundary = is_near_boundary(
        pair.simultaneous, stretched_errors(log_errors_of_bounds(by_batch, c), stretch), margin);
    pair.beyond_what_was_cut = cuts_until(data, fit, pair.a, level.at).beyond_what_was_cut ||
                               cuts_until(data, fit, pair.b, level.at).beyond_what_was_cut;
    if (!is_settled(pair.verdict))
      pair.further_runs = further_runs_for(pair, log_ratios[c], data, margin);
    pair.ratio_by_level = ratios_by_level(data, fit, pair);
    pair.also_differs = what_else_differs(trial, data.arms[pair.a], data.arms[pair.b]);
    add_remarks(pair, data, fit, level.starts_differ);
    if (look) pair.remarks.push_back(in_words(*look));
  }
  return pairs;
}

}  // namespace

std::vector<Comparison> compare_all(const trials::Trial& trial,
                                    const BluntingData& data,
                                    const BluntingFit& fit,
                                    const Question& question,
                                    base::Seed seed) {
  std::vector<Comparison> comparisons;
  for (std::size_t medium = 0; medium < data.media.size(); ++medium) {
    std::vector<std::size_t> arms;
    for (std::size_t a = 0; a < data.arms.size(); ++a) {
      if (data.medium_of_arm[a] == medium) arms.push_back(a);
    }
    for (Comparison& pair : compare_family(trial, data, fit, question, arms, seed)) {
      comparisons.push_back(std::move(pair));
    }
  }
  return comparisons;
}

}  // namespace keenfall::verdicts
