#include "sharpening/bevel_geometry.h"

#include "base/plain_number.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>

namespace keenfall::sharpening {

namespace {

using base::Problem;

constexpr double kUmPerMm = 1000;
constexpr double kLeastBevelDeg = 1;
constexpr double kLeastStepDeg = 0.01;  // between two planes that are to meet
constexpr double kDeepestDamageUm = 1e4;

double tangent(trials::PerSideAngle angle) { return std::tan(angle.deg * std::numbers::pi / 180); }

std::string degrees_text(trials::PerSideAngle angle) {
  return base::plain_number(angle.deg) + "° per side";
}

std::optional<Problem> problem_of_bevel(const Bevel& bevel) {
  const double bevel_deg = bevel.bevel_angle.deg;
  if (!(bevel_deg >= kLeastBevelDeg && bevel_deg < 90)) {
    return Problem{
        .sentence = "a bevel angle of " + degrees_text(bevel.bevel_angle) + " is no edge",
        .place = {.column = "bevel_angle"},
        .accepted = "from 1° up to less than 90° per side"};
  }
  if (!(bevel.primary_angle.deg >= 0 && bevel.primary_angle.deg <= bevel_deg - kLeastStepDeg)) {
    return Problem{.sentence = "the faces behind the bevel stand at " +
                               degrees_text(bevel.primary_angle) + ", the bevel at " +
                               degrees_text(bevel.bevel_angle) + ": the bevel must be steeper",
                   .place = {.column = "primary_angle"},
                   .accepted = "from 0° up to 0.01° less than the bevel angle"};
  }
  const double thickness_mm = bevel.thickness_behind_edge_mm;
  if (!(thickness_mm >= 1e-3 && thickness_mm <= 1e3)) {
    return Problem{.sentence = "a thickness behind the edge of " +
                               base::plain_number(thickness_mm) + " mm is no thickness",
                   .place = {.column = "thickness_behind_edge"},
                   .accepted = "0.001 to 1000 mm, usually 0.1 to 1 mm"};
  }
  return std::nullopt;
}

std::optional<Problem> problem_of_damage(const EdgeDamage& damage, double thickness_mm) {
  const auto is_length = [](double um) { return um >= 0 && um <= kDeepestDamageUm; };
  if (!is_length(damage.land_um)) {
    return Problem{
        .sentence = "a land of " + base::plain_number(damage.land_um) + " um is no width",
        .place = {.column = "land"},
        .accepted = "0 to 10,000 um"};
  }
  if (!is_length(damage.deepest_chip_um)) {
    return Problem{
        .sentence = "a chip of " + base::plain_number(damage.deepest_chip_um) + " um is no depth",
        .place = {.column = "deepest_chip"},
        .accepted = "0 to 10,000 um"};
  }
  if (damage.land_um >= kUmPerMm * thickness_mm) {
    return Problem{.sentence = "a land of " + base::plain_number(damage.land_um) +
                               " um is as wide as the edge is thick: the bevel is worn away",
                   .place = {.column = "land"},
                   .accepted = "less than the thickness behind the edge"};
  }
  return std::nullopt;
}

double land_area_um2(double land_um, double tan_bevel) {
  return land_um * land_um / (4 * tan_bevel);
}

}  // namespace

double land_recession_um(double land_um, trials::PerSideAngle bevel_angle) {
  return land_um / (2 * tangent(bevel_angle));
}

double apex_rise_um(const EdgeDamage& damage, trials::PerSideAngle bevel_angle) {
  return land_recession_um(damage.land_um, bevel_angle) + damage.deepest_chip_um;
}

base::Result<SteelToRemove> reset_bevel(const Bevel& bevel, const EdgeDamage& damage) {
  if (auto problem = problem_of_bevel(bevel)) return base::failed(*problem);
  if (auto problem = problem_of_damage(damage, bevel.thickness_behind_edge_mm)) {
    return base::failed(*problem);
  }
  const double t = tangent(bevel.bevel_angle);
  const double a = tangent(bevel.primary_angle);
  const double h_um = apex_rise_um(damage, bevel.bevel_angle);
  const double thickness_um = kUmPerMm * bevel.thickness_behind_edge_mm;
  const double thickening_um = 2 * h_um * a * t / (t - a);
  // T h + h^2 a t/(t - a) is h times the mean of the thickness before and after.
  const double wedge_um2 = h_um * (thickness_um + thickening_um / 2);
  return SteelToRemove{.area_um2 = wedge_um2 - land_area_um2(damage.land_um, t),
                       .apex_rise_um = h_um,
                       .thickness_after_mm = (thickness_um + thickening_um) / kUmPerMm};
}

base::Result<SteelToRemove> set_micro_bevel(const Bevel& bevel,
                                            trials::PerSideAngle micro_angle,
                                            const EdgeDamage& damage) {
  if (auto problem = problem_of_bevel(bevel)) return base::failed(*problem);
  if (auto problem = problem_of_damage(damage, bevel.thickness_behind_edge_mm)) {
    return base::failed(*problem);
  }
  if (!(micro_angle.deg >= bevel.bevel_angle.deg + kLeastStepDeg && micro_angle.deg < 90)) {
    return base::failed(
        {.sentence = "a micro-bevel of " + degrees_text(micro_angle) + " on a bevel of " +
                     degrees_text(bevel.bevel_angle) + ": a micro-bevel must be steeper",
         .place = {.column = "micro_bevel"},
         .accepted = "0.01° more than the bevel angle or steeper, and less than 90° per side"});
  }
  const double t = tangent(bevel.bevel_angle);
  const double m = tangent(micro_angle);
  const double h_um = apex_rise_um(damage, bevel.bevel_angle);
  const double shoulder_um = 2 * h_um * t * m / (m - t);
  if (shoulder_um > kUmPerMm * bevel.thickness_behind_edge_mm) {
    return base::failed({.sentence = "a micro-bevel that takes away " +
                                     base::with_figures(h_um, 2) + " um would be " +
                                     base::with_figures(shoulder_um, 3) +
                                     " um thick, more than the bevel itself",
                         .place = {.column = "micro_bevel"},
                         .accepted = "a steeper micro-bevel, or none"});
  }
  // Nothing is left of a land under a micro-bevel of nearly 90 degrees.
  const double area_um2 = h_um * shoulder_um / 2 - land_area_um2(damage.land_um, t);
  return SteelToRemove{.area_um2 = std::max(0.0, area_um2),
                       .apex_rise_um = h_um,
                       .thickness_after_mm = shoulder_um / kUmPerMm};
}

}  // namespace keenfall::sharpening
