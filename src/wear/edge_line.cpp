#include "wear/edge_line.h"

#include <algorithm>
#include <cmath>

namespace keenfall::wear {

std::size_t segment_count(const EdgeStart& start) {
  const double count = std::round(start.length_mm * 1e3 / start.segment_length_um);
  return static_cast<std::size_t>(std::max(1.0, count));
}

EdgeLine started_edge(const EdgeStart& start) {
  const std::size_t count = segment_count(start);
  EdgeLine line{.segment_length_um = start.segment_length_um,
                .land_width_um = std::vector<double>(count, start.finish.land_width_um),
                .height_um = std::vector<double>(count, 0),
                .fold_height_um = std::vector<double>(count, 0),
                .chip_depth_um = std::vector<double>(count, 0)};
  if (start.finish.tooth_depth_um == 0) return line;
  for (std::size_t i = 0; i < count; ++i) {
    const double teeth =
        static_cast<double>(i) * start.segment_length_um / start.finish.tooth_spacing_um;
    const double from_peak = std::abs(teeth - std::round(teeth));  // 0 at a peak, 1/2 in a valley
    line.height_um[i] = start.finish.tooth_depth_um * (0.5 - 2 * from_peak);
  }
  return line;
}

}  // namespace keenfall::wear
