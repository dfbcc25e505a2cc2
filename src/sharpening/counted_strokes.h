// Passes counted on one's own stone, with the bevel measured before and after: how much steel the
// stone took, and the k0 that says so.
//
// In: the bevel as it was ground sharp, the passes (both sides together, the stone dressed before
// the first and not in between), force and stroke, and either how far the apex went up or how wide
// the ground face was before and after; with what each reading may err by. Out: the steel removed,
// as a range. With g = tan gamma of the face that was ground and b = tan beta of what is behind it
//   by height h      A = T h + h^2 a t/(t - a)                        as in bevel_geometry.h
//   by face widths   A = sin^2 gamma (w1^2 - w0^2) (g - b)/(g b)
// Derived here. Fails where nothing was measured, where the change is no larger than its error, and
// where a number is out of its range. docs/methods/resharpening.md.
#pragma once

#include "base/result.h"
#include "materials/uncertain_constant.h"
#include "sharpening/bevel_geometry.h"
#include "sharpening/removal.h"

#include <optional>

namespace keenfall::sharpening {

// Either height_um or width_after_um is said.
struct BevelCount {
  double passes = 0;
  Stroke stroke;
  double edge_length_mm = 100;
  std::optional<double> height_um;
  double width_before_um = 0;  // along the face, on one side
  std::optional<double> width_after_um;
  std::optional<trials::PerSideAngle> face_angle;  // of a test bevel; none: the bevel itself
  std::optional<double> error_um;                  // of a reading, either way; none: a tenth of it
};

using materials::Estimate;

struct CountedStrokes {
  double passes = 0;
  Stroke stroke;
  Estimate removed_mm3;

  bool operator==(const CountedStrokes&) const = default;
};

[[nodiscard]] base::ResultOrProblems<CountedStrokes> counted_strokes(const BevelCount& count,
                                                                     const Bevel& bevel);

// What one's own strokes of another day are, of those counted, in force times path.
inline constexpr Estimate kAnotherDay = {
    .typical = 1, .lo = 0.8, .hi = 1.25, .from = {"plausible", materials::TrustMark::guessed}};

// k0 = V R/(e F s [k n + (1 - k) n_g (1 - exp(-n/n_g))]), V being constants.counted_mm3, times
// constants.later_stroke_ratio; every other constant as it stands. V is above zero.
[[nodiscard]] RemovalConstants calibrated(RemovalConstants constants,
                                          const CountedStrokes& counted);

}  // namespace keenfall::sharpening
