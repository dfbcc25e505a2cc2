#include "wear/apex_readings.h"

#include "wear/exponential.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace keenfall::wear {

namespace {

double mean(const std::vector<double>& numbers) {
  return std::accumulate(numbers.begin(), numbers.end(), 0.0) / static_cast<double>(numbers.size());
}

double slope(const EdgeLine& edge, std::size_t i) {
  const std::size_t count = edge.height_um.size();
  if (count < 2) return 0;
  const std::size_t from = std::min(i, count - 2);
  return std::abs(edge.height_um[from + 1] - edge.height_um[from]) / edge.segment_length_um;
}

}  // namespace

double push_reading_um(const EdgeLine& edge, const ReadingRules& rules) {
  const double highest = *std::ranges::max_element(edge.height_um);
  double weights = 0;
  double weighted = 0;
  for (std::size_t i = 0; i < edge.height_um.size(); ++i) {
    const double weight = vector_exp((edge.height_um[i] - highest) / rules.push_reach_um);
    weights += weight;
    weighted += weight * (edge.land_width_um[i] + rules.fold_share * edge.fold_height_um[i]);
  }
  return weighted / weights;
}

double slice_reading_um(const EdgeLine& edge, const ReadingRules& rules) {
  const double highest = *std::ranges::max_element(edge.height_um);
  double weights = 0;
  double weighted = 0;
  for (std::size_t i = 0; i < edge.height_um.size(); ++i) {
    const double weight = vector_exp((edge.height_um[i] - highest) / rules.slice_reach_um);
    const double bluntness = edge.land_width_um[i] + rules.fold_share * edge.fold_height_um[i];
    weights += weight;
    weighted += weight * (1 + rules.slope_gain * slope(edge, i)) / bluntness;
  }
  return weights / weighted;
}

double force_newton_per_mm(double push_um, const Wedge& wedge, const CutForce& force) {
  return force.separation_newton_per_mm + force.bluntness_newton_per_mm_per_um * push_um +
         force.flank_pressure_mpa * force.flank_height_mm * (wedge.tangent + force.friction);
}

DamageSummary damage_summary(const EdgeLine& edge, const EdgeLine& start, double visible_chip_um) {
  const std::size_t count = edge.land_width_um.size();
  DamageSummary summary{.mean_land_um = mean(edge.land_width_um),
                        .recession_um = mean(start.height_um) - mean(edge.height_um),
                        .deepest_chip_um = *std::ranges::max_element(edge.chip_depth_um)};
  double chips = 0;
  double rolled = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const bool chipped = edge.chip_depth_um[i] > visible_chip_um;
    const bool chipped_before = i > 0 && edge.chip_depth_um[i - 1] > visible_chip_um;
    if (chipped && !chipped_before) ++chips;
    if (edge.fold_height_um[i] > 0) ++rolled;
  }
  summary.chips_per_mm = chips / (static_cast<double>(count) * edge.segment_length_um * 1e-3);
  summary.rolled_fraction = rolled / static_cast<double>(count);
  return summary;
}

}  // namespace keenfall::wear
