// The edge as a line of short segments, and how it starts.
//
// A structure of arrays, one number per segment from heel to tip. The land is the flat at the apex;
// height is that of the land over the mean start, so recession is its fall; a fold is the lip that
// was bent over and still hangs on; chip depth is what breaking took away, in all.
// Method page: docs/methods/apex.md
#pragma once

#include "trials/edge.h"

#include <cstddef>
#include <vector>

namespace keenfall::wear {

// Teeth are a zigzag of `tooth_depth_um` from peak to valley; the land starts equal along them.
struct EdgeFinish {
  double land_width_um = 0.5;
  double tooth_depth_um = 0;
  double tooth_spacing_um = 8;

  bool operator==(const EdgeFinish&) const = default;
};

struct EdgeStart {
  EdgeFinish finish;
  trials::PerSideAngle apex_angle{15};
  double length_mm = 20;
  double longest_segment_um = 4;

  bool operator==(const EdgeStart&) const = default;
};

struct EdgeLine {
  double segment_length_um = 0;
  std::vector<double> land_width_um;
  std::vector<double> height_um;
  std::vector<double> fold_height_um;
  std::vector<double> chip_depth_um;

  bool operator==(const EdgeLine&) const = default;
};

// The length of the segments used: the longest one not above `longest_segment_um` of which a whole
// number makes half the spacing, so that every peak and every valley has a segment (28 um: 3.5, not
// 4). Without teeth `longest_segment_um` itself.
[[nodiscard]] double segment_length_um(const EdgeStart& start);

// length / segment length, rounded, at least 1.
[[nodiscard]] std::size_t segment_count(const EdgeStart& start);

[[nodiscard]] EdgeLine started_edge(const EdgeStart& start);

}  // namespace keenfall::wear
