#include "verdicts/compare.h"

#include "numerics/summaries.h"
#include "verdicts/compared_at.h"
#include "verdicts/family.h"
#include "verdicts/lasting.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <set>

namespace keenfall::verdicts {

namespace {

using blunting::BluntingData;
using blunting::BluntingFit;

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

void add_ratios_by_level(std::vector<Comparison>& pairs,
                         const BluntingData& data,
                         const BluntingFit& fit,
                         std::span<const std::size_t> arms,
                         std::optional<ClaimAbout> claim) {
  for (const double level : kLevelsDrawn) {
    add_ratio_at_level(
        pairs,
        family_of_curves(data, fit, arms, {.what = ComparedAt::level, .level = level}, claim));
  }
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

std::vector<Comparison> compare_medium(const trials::Trial& trial,
                                       const BluntingData& data,
                                       const BluntingFit& fit,
                                       const Question& question,
                                       std::span<const std::size_t> arms,
                                       base::Seed seed) {
  const FamilyLevel level = compared_at(question, data, fit, arms);
  const Family family = family_of_curves(data, fit, arms, level.at, question.claim);
  std::vector<Comparison> pairs = compare_family(trial,
                                                 family,
                                                 all_pairs(arms.size()),
                                                 {.worth_it_margin = question.worth_it_margin,
                                                  .looks = question.looks,
                                                  .seed = seed,
                                                  .told_in = question.told_in});
  if (pairs.empty()) return pairs;
  add_ratios_by_level(pairs, data, fit, arms, question.claim);
  for (Comparison& pair : pairs) add_remarks(pair, data, fit, level.starts_differ);
  return pairs;
}

}  // namespace

Family family_of_curves(const BluntingData& data,
                        const BluntingFit& fit,
                        std::span<const std::size_t> arms,
                        const At& at,
                        std::optional<ClaimAbout> claim) {
  Family family{.at = at, .batches = 2 * fit.chains};
  if (arms.empty()) return family;
  for (const std::size_t arm : arms) {
    LastingArm lasting{
        .index = arm,
        .arm = data.arms[arm],
        .runs = runs_of(data, arm),
        .carries_steel = claim != ClaimAbout::these_blades &&
                         (fit.parts.specimens || blunting::every_run_is_a_specimen(data)) &&
                         specimens_of(data, arm) > 1,
        .log_cuts = log_cuts_until(data, fit, arm, at, ClaimAbout::these_blades)};
    if (lasting.carries_steel) {
      lasting.log_cuts_steel = log_cuts_until(data, fit, arm, at, ClaimAbout::the_steels);
    }
    lasting.beyond_what_was_cut =
        std::exp(numerics::median_of(lasting.log_cuts)) > longest_run_cuts(data, arm);
    family.arms.push_back(std::move(lasting));
  }
  return family;
}

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
    for (Comparison& pair : compare_medium(trial, data, fit, question, arms, seed)) {
      comparisons.push_back(std::move(pair));
    }
  }
  return comparisons;
}

}  // namespace keenfall::verdicts
