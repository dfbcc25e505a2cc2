#include "wear/half_keenness.h"

#include <algorithm>
#include <cmath>

namespace keenfall::wear {

std::optional<double> cuts_to_level(const SimulatedEdge& edge, ApexReading reading, double level) {
  const auto read = [reading](const EdgeReading& at) {
    return reading == ApexReading::push ? at.push_um : at.slice_um;
  };
  const auto& readings = edge.readings;
  if (readings.empty()) return std::nullopt;
  const double asked = level * read(readings.front());
  const auto after =
      std::ranges::find_if(readings, [&](const EdgeReading& at) { return read(at) >= asked; });
  if (after == readings.end()) return std::nullopt;
  if (after == readings.begin()) return static_cast<double>(after->cuts);
  const auto before = std::prev(after);
  const double part = (asked - read(*before)) / (read(*after) - read(*before));
  return static_cast<double>(before->cuts) + part * static_cast<double>(after->cuts - before->cuts);
}

std::vector<long> rising_cuts(long last, double step_ratio) {
  std::vector<long> cuts{0};
  while (cuts.back() < last) {
    const long next = std::lround(static_cast<double>(cuts.back()) * step_ratio);
    cuts.push_back(std::min(last, std::max(cuts.back() + 1, next)));
  }
  return cuts;
}

}  // namespace keenfall::wear
