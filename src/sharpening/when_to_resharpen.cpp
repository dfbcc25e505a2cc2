#include "sharpening/when_to_resharpen.h"

#include "numerics/summaries.h"
#include "sharpening/drawn_stone.h"
#include "sharpening/ranged_numbers.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace keenfall::sharpening {

namespace {

constexpr double kFarthest = 4;  // times the cuts seen: beyond, growth is anybody's guess
constexpr double kEarliest = 0.01;
constexpr double kStepBack = 0.97;
constexpr double kMostCutsSeen = 1e9;
constexpr double kLongestSetupMinutes = 1e6;
constexpr int kMostDraws = 400;  // of a search each; their middle 90 % is known to a few per cent

std::vector<Ranged> ranged_numbers(const DamageGrowth& growth) {
  return {{"damage that was seen after",
           growth.seen_after_cuts,
           " cuts",
           1,
           kMostCutsSeen,
           "1 to 1,000,000,000 cuts",
           "seen_after_cuts"},
          {"setting up for",
           growth.setup_minutes,
           " min",
           0,
           kLongestSetupMinutes,
           "0 to 1,000,000 min",
           "setup"}};
}

base::Result<double> steel_after_mm3(EdgeToSharpen edge, const DamageGrowth& growth, double cuts) {
  edge.damage = damage_after(edge.damage, growth, cuts);
  return steel_to_remove(edge).transform(
      [&](const SteelToRemove& steel) { return volume_mm3(steel, edge); });
}

// As late as may be looked: where the geometry still holds.
double last_cuts(const EdgeToSharpen& edge, const DamageGrowth& growth) {
  double last = kFarthest * growth.seen_after_cuts;
  // After the cuts seen the damage is what was asked for, and that was just worked with.
  while (last > growth.seen_after_cuts && !steel_after_mm3(edge, growth, last)) {
    last = std::max(growth.seen_after_cuts, last * kStepBack);
  }
  return last;
}

MomentOverDraws over_draws(const BestMoment& typical,
                           const std::vector<BestMoment>& moments,
                           const CutsStretch& stretch) {
  std::vector<double> cuts;
  std::vector<double> minutes;
  for (const BestMoment& each : moments) {
    cuts.push_back(each.cuts);
    minutes.push_back(each.minutes_per_1000_cuts);
  }
  const auto share_of = [&](Where where) {
    return static_cast<double>(std::ranges::count(moments, where, &BestMoment::where)) /
           static_cast<double>(moments.size());
  };
  return {.typical = typical,
          .cuts = numerics::interval_of(cuts),
          .minutes_per_1000_cuts = numerics::interval_of(minutes),
          .fraction_at_first = share_of(Where::at_first),
          .fraction_at_last = share_of(Where::at_last),
          .looked_to_cuts = stretch.last,
          .draws = static_cast<int>(moments.size())};
}

}  // namespace

EdgeDamage damage_after(const EdgeDamage& seen, const DamageGrowth& growth, double cuts) {
  const double times = cuts / growth.seen_after_cuts;
  return {.land_um = seen.land_um * std::sqrt(times),
          .deepest_chip_um = seen.deepest_chip_um * times};
}

std::vector<base::Problem> problems_of(const DamageGrowth& growth) {
  return problems_of(ranged_numbers(growth));
}

base::Result<MomentOverDraws> when_to_resharpen(const ResharpeningQuestion& question,
                                                const Stone& stone,
                                                const DamageGrowth& growth) {
  std::vector<base::Problem> problems = problems_of(growth);
  std::ranges::move(problems_of(question), std::back_inserter(problems));
  if (!problems.empty()) return base::failed(problems.front());
  const CutsStretch stretch = {.first = kEarliest * growth.seen_after_cuts,
                               .last = last_cuts(question.edge, growth)};
  const DrawnStone drawn = drawn_stone(question, stone, 0);
  const auto moment_by = [&](const CuttingRate& rate) -> base::Result<BestMoment> {
    if (const auto most =
            steel_after_mm3(question.edge, growth, stretch.last).and_then([&](double steel_mm3) {
              return effort(rate, steel_mm3, question.work);
            });
        !most) {
      return base::failed(most.error());  // a stone that stops cutting before
    }
    return best_moment(
        growth.setup_minutes,
        [&](double cuts) {
          const double steel_mm3 = steel_after_mm3(question.edge, growth, cuts).value();
          return effort(rate, steel_mm3, question.work).value().minutes;
        },
        stretch);
  };
  const auto typical = moment_by(rate_of(question, drawn, typical_constants(drawn.constants)));
  if (!typical) return base::failed(typical.error());
  ResharpeningQuestion fewer = question;
  fewer.draws = std::min(question.draws, kMostDraws);
  std::vector<BestMoment> moments;
  for (const CuttingRate& rate : drawn_rates(fewer, drawn)) {
    const auto moment = moment_by(rate);
    if (!moment) return base::failed(moment.error());
    moments.push_back(*moment);
  }
  return over_draws(*typical, moments, stretch);
}

}  // namespace keenfall::sharpening
