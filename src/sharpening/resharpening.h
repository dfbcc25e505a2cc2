// What it takes to bring a damaged edge back: steel, passes, minutes, on each stone, as ranges.
//
// In: bevel, damage, length of edge, steel, stones, how one works. Out: for every stone passes and
// minutes at the typical constants and over joint draws of all poorly known constants (median, 90 %
// and 95 % of the draws; no posterior: no reading is in it), how many times the first stone's
// passes it takes, and which constant the first stone's answer hangs on. Passes that were counted
// on the first stone stand in the place of k0. Fails where the geometry does, and where a number is
// out of its range, in words. What was measured and typed in counts as exact, but for a count.
// docs/methods/resharpening.md.
#pragma once

#include "base/result.h"
#include "base/seed.h"
#include "materials/microstructure.h"
#include "numerics/interval.h"
#include "sharpening/bevel_geometry.h"
#include "sharpening/counted_strokes.h"
#include "sharpening/removal.h"
#include "sharpening/removal_estimates.h"
#include "sharpening/stones.h"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace keenfall::sharpening {

struct EdgeToSharpen {
  Bevel bevel;
  std::optional<trials::PerSideAngle> micro_bevel_angle;  // none: the whole bevel is reset
  EdgeDamage damage;
  double edge_length_mm = 100;
};

struct WayOfWorking {
  Stroke stroke;
  double passes_per_minute = 90;             // of both hands' rhythm; common practice, no source
  std::optional<double> dress_every_passes;  // none: never
  double minutes_per_dressing = 1;

  bool operator==(const WayOfWorking&) const = default;
};

struct Effort {
  double passes = 0;  // on both sides together
  double dressings = 0;
  double minutes = 0;  // with dressing

  bool operator==(const Effort&) const = default;
};

struct StoneEffort {
  Stone stone;
  double resistance_ratio = 0;  // of the steel against this grain; typical
  double glazing_passes = 0;    // typical; beside the point where nothing is lost by glazing
  Effort typical;
  numerics::Interval passes;
  numerics::Interval minutes;
  numerics::Interval times_first;  // passes, of the first stone's in the same draw
};

// What one constant does by itself, the others typical.
struct HangsOn {
  materials::UncertainConstant constant;
  double passes_at_lo = 0;
  double passes_at_hi = 0;
};

// What a count of passes on the first stone made of it.
struct Calibration {
  double wear_mm3_per_newton_m = 0;       // k0, all else typical
  Estimate wear_of_model;                 // what is taken without a count
  numerics::Interval fresh_mm3_per_pass;  // by the count, over the draws
  numerics::Interval fresh_of_model_mm3_per_pass;
  numerics::Interval passes_of_model;  // what the answer would be without the count
};

struct Resharpening {
  SteelToRemove steel;
  double steel_mm3 = 0;
  std::vector<StoneEffort> stones;  // in the order asked
  std::vector<HangsOn> hangs_on;    // of the first stone; what moves the answer most comes first
  std::optional<Calibration> calibration;  // where passes were counted
  base::Seed seed;
  int draws = 0;
};

struct ResharpeningQuestion {
  EdgeToSharpen edge;
  materials::Microstructure steel;
  WayOfWorking work;
  std::optional<CountedStrokes> counted;  // on the first stone, of the same steel
  base::Seed seed;
  int draws = 2000;  // from 2 on
};

// Every number and every angle that cannot be worked with, its field as place.column.
[[nodiscard]] std::vector<base::Problem> problems_of(const ResharpeningQuestion& question);

// At least one stone. Passes and minutes are counted in fractions; per side is half of it.
[[nodiscard]] base::Result<Resharpening> resharpening(const ResharpeningQuestion& question,
                                                      std::span<const Stone> stones);

}  // namespace keenfall::sharpening
