#include "wear/wedge.h"

#include "base/require.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace keenfall::wear {

namespace {

constexpr double kUm2PerMm2 = 1e6;
constexpr int kMostSteps = 200;
constexpr double kRelativeStep = 1e-9;  // steps shrink as squares: the next would be rounding

struct LevelAndSlope {
  double level = 0;
  double slope = 0;
};

// Newton's method on a convex function, from a place where it is not negative: it falls steadily to
// the largest root. None: it has none.
template <class FunctionAndSlope>
std::optional<double> largest_root(double from, const FunctionAndSlope& at) {
  double y = from;
  for (int step = 0; step < kMostSteps; ++step) {
    const auto [level, slope] = at(y);
    if (slope <= 0) return std::nullopt;
    const double fall = level / slope;
    y -= fall;
    if (y <= 0) return std::nullopt;
    if (fall <= kRelativeStep * y) return y;
  }
  return y;
}

// The largest root where it lies beyond a place. A convex function that is above 0 there, and does
// not fall, has none beyond.
template <class FunctionAndSlope>
std::optional<double> root_beyond(double place, double from, const FunctionAndSlope& at) {
  if (from <= place) return std::nullopt;
  const LevelAndSlope there = at(place);
  if (there.level > 0 && there.slope >= 0) return std::nullopt;
  const auto root = largest_root(from, at);
  return root && *root > place ? root : std::nullopt;
}

// From where on behind the land sections are thicker than t*.
double thinnest_break_um(const ApexSteel& steel, const Wedge& wedge, double land_width_um) {
  return std::max(0.0, (steel.transition_section_um - land_width_um) / (2 * wedge.tangent));
}

// F / flow stress, in um^2.
double loaded_area_um2(const ApexSteel& steel, double force_newton) {
  return force_newton / steel.flow_stress_mpa * kUm2PerMm2;
}

// q / flow stress, in um.
double loaded_width_um(const ApexSteel& steel, double line_load_newton_per_mm) {
  return line_load_newton_per_mm / steel.flow_stress_mpa * 1e3;
}

}  // namespace

Wedge wedge_of(trials::PerSideAngle angle) {
  base::require(angle.deg > 0 && angle.deg < 90, "an angle per side lies between 0 and 90 degrees");
  const double radians = angle.deg * std::numbers::pi / 180;
  return {.tangent = std::tan(radians), .hardness_ratio = 1.155 * (1 + radians)};
}

double flow_stress_mpa(double hardness_hv) { return 9.81 * hardness_hv / 3; }

double transition_section_um(const BrittleSection& section) {
  const double ratio = section.toughness_mpa_sqrt_m / section.flow_stress_mpa;
  return section.flaw_constant * ratio * ratio * 1e6;
}

std::optional<double> fold_height_um(const ApexSteel& steel,
                                     const Wedge& wedge,
                                     double land_width_um,
                                     const SidewaysLoad& load) {
  const double t = wedge.tangent;
  const double l = load.contact_length_um;
  const double area = loaded_area_um2(steel, load.force_newton);
  const double sharp = std::sqrt(area / 2) / t;
  if (!(sharp > 0)) return std::nullopt;
  return largest_root(sharp, [=](double y) {
    const double length = l + 2 * y;
    const double section = land_width_um + 2 * t * y;
    return LevelAndSlope{.level = length * section * section / 4 - area * y,
                         .slope = section * (section / 2 + length * t) - area};
  });
}

std::optional<double> chip_depth_um(const ApexSteel& steel,
                                    const Wedge& wedge,
                                    double land_width_um,
                                    const SidewaysLoad& load) {
  if (std::isinf(steel.transition_section_um)) return std::nullopt;
  const double t = wedge.tangent;
  const double l = load.contact_length_um;
  const double pull =
      4 * loaded_area_um2(steel, load.force_newton) / std::sqrt(steel.transition_section_um);
  const auto at = [=](double y) {
    const double length = l + 2 * y;
    const double section = land_width_um + 2 * t * y;
    const double root = std::sqrt(section);
    return LevelAndSlope{.level = length * section * root - pull * y,
                         .slope = root * (2 * section + 3 * t * length) - pull};
  };
  const double half_pull = std::cbrt(pull / 2);
  return root_beyond(
      thinnest_break_um(steel, wedge, land_width_um), half_pull * half_pull / (2 * t), at);
}

double twist_threshold_newton_per_mm(const ApexSteel& steel,
                                     const Wedge& wedge,
                                     double land_width_um) {
  const double transition = steel.transition_section_um;
  const double hinge = 2 * land_width_um;
  const double held = land_width_um <= 27.0 / 64 * transition
                          ? hinge
                          : 3 * std::numbers::sqrt3 / 4 * std::sqrt(land_width_um * transition);
  return steel.flow_stress_mpa * held * 1e-3 * wedge.tangent;
}

std::optional<double> twist_fold_height_um(const ApexSteel& steel,
                                           const Wedge& wedge,
                                           double land_width_um,
                                           double line_load_newton_per_mm) {
  const double t = wedge.tangent;
  const double wt = land_width_um * t;
  const double over = loaded_width_um(steel, line_load_newton_per_mm) - wt;
  const double discriminant = over * over - wt * wt;
  if (over <= 0 || discriminant < 0) return std::nullopt;
  return (over + std::sqrt(discriminant)) / (2 * t * t);
}

std::optional<double> twist_chip_depth_um(const ApexSteel& steel,
                                          const Wedge& wedge,
                                          double land_width_um,
                                          double line_load_newton_per_mm) {
  if (std::isinf(steel.transition_section_um)) return std::nullopt;
  const double t = wedge.tangent;
  const double pull =
      4 * loaded_width_um(steel, line_load_newton_per_mm) / std::sqrt(steel.transition_section_um);
  // A sharp wedge: (2 t y)^1.5 = pull y.
  const double sharp = pull * pull / (8 * t * t * t);
  return root_beyond(thinnest_break_um(steel, wedge, land_width_um), sharp, [=](double y) {
    const double section = land_width_um + 2 * t * y;
    const double root = std::sqrt(section);
    return LevelAndSlope{.level = section * root - pull * y, .slope = 3 * t * root - pull};
  });
}

double dent_depth_um(const ApexSteel& steel,
                     const Wedge& wedge,
                     double land_width_um,
                     const PressedParticle& particle) {
  const double area = loaded_area_um2(steel, particle.force_newton) / wedge.hardness_ratio;
  if (!(area > 0)) return 0;
  // With u = sqrt(d): c u^3 + w u = area / (2 sqrt(D)), which rises steadily.
  const double c = 4 * wedge.tangent / 3;
  const double held = area / (2 * std::sqrt(particle.diameter_um));
  const auto u = largest_root(std::cbrt(held / c), [=](double v) {
    return LevelAndSlope{.level = v * (c * v * v + land_width_um) - held,
                         .slope = 3 * c * v * v + land_width_um};
  });
  return u.value_or(0) * u.value_or(0);
}

}  // namespace keenfall::wear
