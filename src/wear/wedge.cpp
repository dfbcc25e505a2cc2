#include "wear/wedge.h"

#include "base/require.h"

#include <cmath>
#include <numbers>

namespace keenfall::wear {

namespace {

constexpr double kUm2PerMm2 = 1e6;
constexpr int kMostSteps = 200;
constexpr double kRelativeStep = 1e-9;  // steps shrink as squares: the next would be rounding

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

struct LevelAndSlope {
  double level = 0;
  double slope = 0;
};

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

double chip_depth_um(const ApexSteel& steel,
                     const Wedge& wedge,
                     double land_width_um,
                     const SidewaysLoad& load) {
  const double t = wedge.tangent;
  const double l = load.contact_length_um;
  const double pull =
      4 * loaded_area_um2(steel, load.force_newton) / std::sqrt(steel.transition_section_um);
  const double half_pull = std::cbrt(pull / 2);
  const auto depth = largest_root(half_pull * half_pull / (2 * t), [=](double y) {
    const double length = l + 2 * y;
    const double section = land_width_um + 2 * t * y;
    const double root = std::sqrt(section);
    return LevelAndSlope{.level = length * section * root - pull * y,
                         .slope = root * (2 * section + 3 * t * length) - pull};
  });
  return depth.value_or(0);
}

double twist_threshold_newton_per_mm(const ApexSteel& steel,
                                     const Wedge& wedge,
                                     double land_width_um) {
  return 2 * steel.flow_stress_mpa * land_width_um * 1e-3 * wedge.tangent;
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

double twist_chip_depth_um(const ApexSteel& steel,
                           const Wedge& wedge,
                           double land_width_um,
                           double line_load_newton_per_mm) {
  const double t = wedge.tangent;
  const double pull =
      4 * loaded_width_um(steel, line_load_newton_per_mm) / std::sqrt(steel.transition_section_um);
  // A sharp wedge: (2 t y)^1.5 = pull y.
  const double sharp = pull * pull / (8 * t * t * t);
  const auto depth = largest_root(sharp, [=](double y) {
    const double section = land_width_um + 2 * t * y;
    const double root = std::sqrt(section);
    return LevelAndSlope{.level = section * root - pull * y, .slope = 3 * t * root - pull};
  });
  return depth.value_or(0);
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
