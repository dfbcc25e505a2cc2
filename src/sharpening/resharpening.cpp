#include "sharpening/resharpening.h"

#include "base/require.h"
#include "materials/abrasion_resistance.h"
#include "numerics/summaries.h"
#include "sharpening/drawn_stone.h"
#include "sharpening/ranged_numbers.h"

#include <algorithm>
#include <iterator>
#include <string>

namespace keenfall::sharpening {

namespace {

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

base::Result<Draws> drawn_efforts(const ResharpeningQuestion& question,
                                  const DrawnStone& stone,
                                  double steel_mm3) {
  Draws draws;
  for (const CuttingRate& rate : drawn_rates(question, stone)) {
    const auto found = effort(rate, steel_mm3, question.work);
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
                                                    const DrawnStone& stone,
                                                    double steel_mm3) {
  const RemovalConstants typical = typical_constants(stone.constants);
  std::vector<HangsOn> all;
  for (const RemovalEstimate& moved : stone.constants) {
    const Estimate& estimate = moved.constant.estimate;
    if (estimate.is_known()) continue;
    HangsOn each{.constant = moved.constant};
    for (const bool is_hi : {false, true}) {
      RemovalConstants values = typical;
      values.*moved.member = is_hi ? estimate.hi : estimate.lo;
      const auto found = effort(rate_of(question, stone, values), steel_mm3, question.work);
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

// The same question without the count says how far it shrank the range.
base::Result<Calibration> calibration_of(const ResharpeningQuestion& question,
                                         const Stone& stone,
                                         double steel_mm3) {
  ResharpeningQuestion uncounted = question;
  uncounted.counted.reset();
  const DrawnStone model = drawn_stone(uncounted, stone, 0);
  const DrawnStone counted = drawn_stone(question, stone, 0);
  const auto before = drawn_efforts(uncounted, model, steel_mm3);
  if (!before) return base::failed(before.error());
  const auto fresh_mm3 = [&](const ResharpeningQuestion& asked, const DrawnStone& drawn) {
    std::vector<double> fresh;
    for (const CuttingRate& rate : drawn_rates(asked, drawn)) {
      fresh.push_back(rate.fresh_mm3_per_pass);
    }
    return numerics::interval_of(fresh);
  };
  const RemovalConstants typical =
      calibrated(typical_constants(counted.constants), *question.counted);
  return Calibration{.wear_mm3_per_newton_m = typical.wear_mm3_per_newton_m,
                     .wear_of_model = model_wear(),
                     .fresh_mm3_per_pass = fresh_mm3(question, counted),
                     .fresh_of_model_mm3_per_pass = fresh_mm3(uncounted, model),
                     .passes_of_model = numerics::interval_of(before->passes)};
}

}  // namespace

std::vector<base::Problem> problems_of(const ResharpeningQuestion& question) {
  const EdgeToSharpen& edge = question.edge;
  std::vector<base::Problem> problems = problems_of(edge.bevel, edge.damage);
  if (problems.empty() && edge.micro_bevel_angle) {
    if (const auto steel = steel_to_remove(edge); !steel) problems.push_back(steel.error());
  }
  std::ranges::move(problems_of(ranged_numbers(question)), std::back_inserter(problems));
  return problems;
}

base::Result<Resharpening> resharpening(const ResharpeningQuestion& question,
                                        std::span<const Stone> stones) {
  base::require(!stones.empty() && question.draws >= 2, "there is a stone, and draws of it");
  if (const auto problems = problems_of(question); !problems.empty()) {
    return base::failed(problems.front());
  }
  const SteelToRemove steel = steel_to_remove(question.edge).value();
  Resharpening result{.steel = steel,
                      .steel_mm3 = volume_mm3(steel, question.edge),
                      .seed = question.seed,
                      .draws = question.draws};
  std::vector<double> first_passes;
  for (std::size_t i = 0; i < stones.size(); ++i) {
    const DrawnStone stone = drawn_stone(question, stones[i], i);
    const RemovalConstants typical = typical_constants(stone.constants);
    const CuttingRate rate = rate_of(question, stone, typical);
    const auto found = effort(rate, result.steel_mm3, question.work);
    if (!found) return base::failed(found.error());
    const auto draws = drawn_efforts(question, stone, result.steel_mm3);
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
  auto hangs_on =
      what_it_hangs_on(question, drawn_stone(question, stones.front(), 0), result.steel_mm3);
  if (!hangs_on) return base::failed(hangs_on.error());
  result.hangs_on = *hangs_on;
  if (question.counted) {
    auto calibration = calibration_of(question, stones.front(), result.steel_mm3);
    if (!calibration) return base::failed(calibration.error());
    result.calibration = *calibration;
  }
  return result;
}

}  // namespace keenfall::sharpening
