#include "sharpening/resharpening.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "materials/abrasion_resistance.h"
#include "numerics/summaries.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>

namespace keenfall::sharpening {

namespace {

constexpr double kMm3PerUm2AndMm = 1e-6;

struct Ranged {
  std::string what;
  double found = 0;
  std::string unit;
  double lo = 0;
  double hi = 0;
  std::string accepted;
  std::string column;
};

// Wide enough for any bench, and so narrow that no number in between overflows.
std::vector<Ranged> ranged_numbers(const ResharpeningQuestion& question) {
  const WayOfWorking& work = question.work;
  const std::string length = "0.001 to 100,000 mm";
  const double dressed_every = work.dress_every_passes.value_or(1);
  return {
      {"an edge length of", question.edge.edge_length_mm, " mm", 1e-3, 1e5, length, "edge_length"},
      {"a force of", work.stroke.force_newton, " N", 1e-3, 1e4, "0.001 to 10,000 N", "force"},
      {"a stroke of", work.stroke.length_mm, " mm", 1e-3, 1e5, length, "stroke_length"},
      {"a pace of",
       work.passes_per_minute,
       "",
       1e-3,
       1e4,
       "0.001 to 10,000 passes a minute",
       "pace"},
      {"dressing after", dressed_every, " passes", 1, 1e9, "1 to 1,000,000,000", "dress_every"},
      {"dressing for",
       work.minutes_per_dressing,
       " min",
       0,
       1e6,
       "0 to 1,000,000 min",
       "dressing_time"}};
}

std::optional<base::Problem> problem_of(const ResharpeningQuestion& question) {
  for (const Ranged& each : ranged_numbers(question)) {
    if (each.found >= each.lo && each.found <= each.hi) continue;
    return base::Problem{.sentence = each.what + " " + base::plain_number(each.found) + each.unit +
                                     " cannot be worked with",
                         .place = {.column = each.column},
                         .accepted = each.accepted};
  }
  return std::nullopt;
}

base::Result<Effort> effort(const CuttingRate& rate, double steel_mm3, const WayOfWorking& work) {
  return passes_to_remove(rate, steel_mm3, work.dress_every_passes).transform([&](double passes) {
    const double dressings =
        work.dress_every_passes
            ? std::max(0.0, std::ceil(passes / *work.dress_every_passes) - 1)  // between passes
            : 0;
    return Effort{
        .passes = passes,
        .dressings = dressings,
        .minutes = passes / work.passes_per_minute + dressings * work.minutes_per_dressing};
  });
}

double resistance_to(const materials::Microstructure& steel, const RemovalConstants& constants) {
  return abrasion_resistance(steel,
                             {.abrasive_hv = constants.abrasive_hv,
                              .groove_width_um = constants.groove_width_um,
                              .resistance_ratio_cap = constants.resistance_ratio_cap});
}

struct Draws {
  std::vector<double> passes;
  std::vector<double> minutes;
};

// The same shared draws for every stone; each stone has a stream of its own beside them.
base::Result<Draws> drawn_efforts(const ResharpeningQuestion& question,
                                  const std::vector<RemovalEstimate>& constants,
                                  double steel_mm3,
                                  std::uint64_t stone_number) {
  numerics::RandomStream shared(question.seed, 0);
  numerics::RandomStream of_stone(question.seed, 1 + stone_number);
  Draws draws;
  for (int i = 0; i < question.draws; ++i) {
    const auto values = drawn_constants(constants, shared, of_stone);
    const auto found = effort(cutting_rate(values, question.work.stroke), steel_mm3, question.work);
    if (!found) return base::failed(found.error());
    draws.passes.push_back(found->passes);
    draws.minutes.push_back(found->minutes);
  }
  return draws;
}

std::vector<double> ratios(const std::vector<double>& over, const std::vector<double>& under) {
  std::vector<double> result;
  for (std::size_t i = 0; i < over.size(); ++i) {
    result.push_back(under[i] > 0 ? over[i] / under[i] : 1);
  }
  return result;
}

base::Result<std::vector<HangsOn>> what_it_hangs_on(const ResharpeningQuestion& question,
                                                    const Stone& stone,
                                                    double steel_mm3) {
  const auto constants = removal_estimates(question.steel, stone);
  const RemovalConstants typical = typical_constants(constants);
  std::vector<HangsOn> all;
  for (const RemovalEstimate& moved : constants) {
    const Estimate& estimate = moved.constant.estimate;
    if (estimate.is_known()) continue;
    HangsOn each{.constant = moved.constant};
    for (const bool is_hi : {false, true}) {
      RemovalConstants values = typical;
      values.*moved.member = is_hi ? estimate.hi : estimate.lo;
      const auto found =
          effort(cutting_rate(values, question.work.stroke), steel_mm3, question.work);
      if (!found) return base::failed(found.error());
      (is_hi ? each.passes_at_hi : each.passes_at_lo) = found->passes;
    }
    all.push_back(each);
  }
  const auto times = [](const HangsOn& each) {
    const double lo = std::min(each.passes_at_lo, each.passes_at_hi);
    return lo > 0 ? -std::max(each.passes_at_lo, each.passes_at_hi) / lo : 0;
  };
  std::ranges::stable_sort(all, {}, times);
  return all;
}

base::Result<SteelToRemove> steel_to_remove(const EdgeToSharpen& edge) {
  return edge.micro_bevel_angle ? set_micro_bevel(edge.bevel, *edge.micro_bevel_angle, edge.damage)
                                : reset_bevel(edge.bevel, edge.damage);
}

double volume_mm3(const SteelToRemove& steel, const EdgeToSharpen& edge) {
  return kMm3PerUm2AndMm * steel.area_um2 * edge.edge_length_mm;
}

}  // namespace

base::Result<Effort> typical_effort(const ResharpeningQuestion& question, const Stone& stone) {
  if (auto problem = problem_of(question)) return base::failed(*problem);
  const auto steel = steel_to_remove(question.edge);
  if (!steel) return base::failed(steel.error());
  const auto constants = typical_constants(removal_estimates(question.steel, stone));
  return effort(cutting_rate(constants, question.work.stroke),
                volume_mm3(*steel, question.edge),
                question.work);
}

base::Result<Resharpening> resharpening(const ResharpeningQuestion& question,
                                        std::span<const Stone> stones) {
  base::require(!stones.empty() && question.draws >= 2, "there is a stone, and draws of it");
  if (auto problem = problem_of(question)) return base::failed(*problem);
  const auto steel = steel_to_remove(question.edge);
  if (!steel) return base::failed(steel.error());
  Resharpening result{.steel = *steel,
                      .steel_mm3 = volume_mm3(*steel, question.edge),
                      .seed = question.seed,
                      .draws = question.draws};
  std::vector<double> first_passes;
  for (std::size_t i = 0; i < stones.size(); ++i) {
    const auto constants = removal_estimates(question.steel, stones[i]);
    const RemovalConstants typical = typical_constants(constants);
    const CuttingRate rate = cutting_rate(typical, question.work.stroke);
    const auto found = effort(rate, result.steel_mm3, question.work);
    if (!found) return base::failed(found.error());
    const auto draws = drawn_efforts(question, constants, result.steel_mm3, i);
    if (!draws) return base::failed(draws.error());
    if (i == 0) first_passes = draws->passes;
    result.stones.push_back(
        {.stone = stones[i],
         .resistance_ratio = resistance_to(question.steel, typical),
         .glazing_passes = rate.glazing_passes,
         .typical = *found,
         .passes = numerics::interval_of(draws->passes),
         .minutes = numerics::interval_of(draws->minutes),
         .times_first = numerics::interval_of(ratios(draws->passes, first_passes))});
  }
  auto hangs_on = what_it_hangs_on(question, stones.front(), result.steel_mm3);
  if (!hangs_on) return base::failed(hangs_on.error());
  result.hangs_on = *hangs_on;
  return result;
}

}  // namespace keenfall::sharpening
