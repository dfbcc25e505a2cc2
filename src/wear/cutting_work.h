// What an edge is used for: a declared schedule of media and pauses, in the order they come.
//
// Damage adds up on one edge through the whole schedule; lives in single media are never averaged.
// A part of a schedule may be a mix of its own, repeated until its cuts are spent ("nine clean
// cuts, then a gritty one"). Cuts are whole numbers.
#pragma once

#include "wear/abrasive_wear.h"
#include "wear/particle_hit.h"

#include <cstddef>
#include <string>
#include <variant>
#include <vector>

namespace keenfall::wear {

// Sideways loads on whole patches of edge, exponentially scattered over patches and cuts.
struct EdgeTwist {
  double mean_line_load_newton_per_mm = 0;
  double patch_length_mm = 2;

  bool operator==(const EdgeTwist&) const = default;
};

// One patch of the edge, pushed sideways once.
struct TwistLoad {
  long cut = 0;           // of the edge's life
  std::size_t patch = 0;  // from the heel
  double line_load_newton_per_mm = 0;
};

// Everything a medium does to the edge of one steel. Presets: media_presets.h.
struct CutMedium {
  std::string name;
  AbrasiveWear wear;
  HardParticles particles;
  EdgeTwist twist;

  bool operator==(const CutMedium&) const = default;
};

// Corrosion while the edge rests. Rates differ by orders of magnitude between steels and liquids:
// 0.1 um of land per hour is about 1 mm of metal a year, 0.001 about 0.01 mm.
struct WetPause {
  double duration_hour = 0;
  double land_growth_um_per_hour = 0;

  bool operator==(const WetPause&) const = default;
};

struct CuttingWork;
struct MixedWork {
  std::vector<CuttingWork> parts;  // in order; begun anew until the cuts are spent
};

struct CuttingWork {
  std::variant<CutMedium, WetPause, MixedWork> what;
  long cuts = 0;  // of a pause: not used
};

using Schedule = std::vector<CuttingWork>;

// The schedule as a plain list, mixes written out. A null medium is a pause.
struct Stretch {
  const CutMedium* medium = nullptr;  // in the schedule, which must outlive the list
  const WetPause* pause = nullptr;
  long cuts = 0;
};
[[nodiscard]] std::vector<Stretch> stretches_of(const Schedule& schedule);

[[nodiscard]] long total_cuts(const Schedule& schedule);

}  // namespace keenfall::wear
