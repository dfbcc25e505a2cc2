// What is there to be seen in a picture of blunting curves, so that its caption explains that and
// nothing else. The script draws by the same facts (web/src/plots/curve_marks.ts).
#pragma once

#include "page/figures_of_medium.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::page {

struct CurvesDrawn {
  bool bands = true;        // curves have their 95 % bands
  bool frame_each = false;  // a frame for each edge
  bool struck = false;      // a reading was struck out
  bool events = false;      // something happened during a run
  bool not_used = false;    // a run is not used
  bool rings = false;       // an edge got to the level that is compared, within what was cut
  bool beyond = false;      // a curve goes on where no edge was cut
};

// `arms`: those of the medium that have a curve.
[[nodiscard]] CurvesDrawn curves_drawn(const MediumShown& shown,
                                       const std::vector<std::size_t>& arms);

// "Thin: each run, through its checkpoints. Crosses: struck out.", after what the axes are.
[[nodiscard]] std::string curves_key(const MediumShown& shown, const CurvesDrawn& drawn);

// For the script: "banded", "plain", or "each" for banded frames of one edge each.
[[nodiscard]] std::string form_of(const CurvesDrawn& drawn);

}  // namespace keenfall::page
