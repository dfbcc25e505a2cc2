#include "wear/edge_line.h"

#include <algorithm>
#include <cmath>

namespace keenfall::wear {

namespace {

// Some slack, so that a length asked for as half the spacing / 7 is not taken for one too long.
double segments_in_half_a_tooth(const EdgeStart& start) {
  const double exact = start.finish.tooth_spacing_um / 2 / start.longest_segment_um;
  return std::max(1.0, std::ceil(exact * (1 - 1e-12)));
}

}  // namespace

double segment_length_um(const EdgeStart& start) {
  if (start.finish.tooth_depth_um == 0) return start.longest_segment_um;
  return start.finish.tooth_spacing_um / 2 / segments_in_half_a_tooth(start);
}

std::size_t segment_count(const EdgeStart& start) {
  const double count = std::round(start.length_mm * 1e3 / segment_length_um(start));
  return static_cast<std::size_t>(std::max(1.0, count));
}

EdgeLine started_edge(const EdgeStart& start) {
  const std::size_t count = segment_count(start);
  EdgeLine line{.segment_length_um = segment_length_um(start),
                .land_width_um = std::vector<double>(count, start.finish.land_width_um),
                .height_um = std::vector<double>(count, 0),
                .fold_height_um = std::vector<double>(count, 0),
                .chip_depth_um = std::vector<double>(count, 0)};
  if (start.finish.tooth_depth_um == 0) return line;
  const double half = segments_in_half_a_tooth(start);
  for (std::size_t i = 0; i < count; ++i) {
    const double along = std::fmod(static_cast<double>(i), 2 * half);
    const double from_peak = std::min(along, 2 * half - along) / half;  // 1 in a valley
    line.height_um[i] = start.finish.tooth_depth_um * (0.5 - from_peak);
  }
  return line;
}

}  // namespace keenfall::wear
