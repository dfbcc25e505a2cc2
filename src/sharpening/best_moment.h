// When to sharpen again: after how many cuts the minutes at the stone per 1000 cuts are fewest.
//
// In: what the damage grows to and what taking it away costs, as one function from cuts to minutes,
// and the minutes that every sharpening costs whatever the damage. Minutes per 1000 cuts after x
// cuts: 1000 (setup + minutes(x))/x. The minimum is searched over a stretch of cuts: first on a
// grid that is even by ratio, then by Brent's method (Boost.Math), to about 1e-7 of x. What a
// blunter edge costs at the cutting is not in it. docs/methods/resharpening.md.
#pragma once

#include <functional>
#include <span>

namespace keenfall::sharpening {

using MinutesAfterCuts = std::function<double(double cuts)>;

struct CutsStretch {
  double first = 1;  // above zero
  double last = 0;   // as blunt as one would go; above first

  bool operator==(const CutsStretch&) const = default;
};

enum class Where {
  inside,
  at_first,
  at_last
};  // at an end: sharpen so early, or as late as may be

struct BestMoment {
  double cuts = 0;
  double minutes_per_1000_cuts = 0;
  Where where = Where::inside;

  bool operator==(const BestMoment&) const = default;
};

// `setup_minutes` 0 or more; minutes finite over the whole stretch.
[[nodiscard]] BestMoment best_moment(double setup_minutes,
                                     const MinutesAfterCuts& minutes,
                                     const CutsStretch& stretch);

struct DamageSeen {
  double cuts = 0;
  double depth_um = 0;

  bool operator==(const DamageSeen&) const = default;
};

// Straight between the points (cuts rising, at least one above zero), from none at no cuts, and
// along the last piece beyond them.
[[nodiscard]] double depth_after_um(std::span<const DamageSeen> seen, double cuts);

}  // namespace keenfall::sharpening
