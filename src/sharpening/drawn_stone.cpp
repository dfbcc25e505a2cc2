#include "sharpening/drawn_stone.h"

#include <algorithm>
#include <cmath>

namespace keenfall::sharpening {

namespace {

constexpr double kMm3PerUm2AndMm = 1e-6;

bool is_counted(const ResharpeningQuestion& question, const DrawnStone& stone) {
  return question.counted.has_value() && stone.number == 0;
}

}  // namespace

DrawnStone drawn_stone(const ResharpeningQuestion& question,
                       const Stone& stone,
                       std::uint64_t number) {
  DrawnStone drawn{.number = number, .constants = removal_estimates(question.steel, stone)};
  if (is_counted(question, drawn)) {
    drawn.constants = with_count(std::move(drawn.constants), *question.counted);
  }
  return drawn;
}

CuttingRate rate_of(const ResharpeningQuestion& question,
                    const DrawnStone& stone,
                    const RemovalConstants& constants) {
  return cutting_rate(
      is_counted(question, stone) ? calibrated(constants, *question.counted) : constants,
      question.work.stroke);
}

std::vector<CuttingRate> drawn_rates(const ResharpeningQuestion& question,
                                     const DrawnStone& stone) {
  numerics::RandomStream shared(question.seed, 0);
  numerics::RandomStream of_stone(question.seed, 1 + stone.number);
  std::vector<CuttingRate> rates;
  for (int i = 0; i < question.draws; ++i) {
    rates.push_back(rate_of(question, stone, drawn_constants(stone.constants, shared, of_stone)));
  }
  return rates;
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

base::Result<SteelToRemove> steel_to_remove(const EdgeToSharpen& edge) {
  return edge.micro_bevel_angle ? set_micro_bevel(edge.bevel, *edge.micro_bevel_angle, edge.damage)
                                : reset_bevel(edge.bevel, edge.damage);
}

double volume_mm3(const SteelToRemove& steel, const EdgeToSharpen& edge) {
  return kMm3PerUm2AndMm * steel.area_um2 * edge.edge_length_mm;
}

}  // namespace keenfall::sharpening
