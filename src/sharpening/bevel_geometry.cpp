#include "sharpening/bevel_geometry.h"

#include "base/plain_number.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace keenfall::sharpening {

namespace {

using base::Problem;

constexpr double kUmPerMm = 1000;
constexpr double kLeastBevelDeg = 1;
constexpr double kDeepestDamageUm = 1e4;

double tangent(trials::PerSideAngle angle) { return std::tan(angle.deg * std::numbers::pi / 180); }

bool is_thickness(double mm) { return mm >= 1e-3 && mm <= 1e3; }

std::string degrees_text(trials::PerSideAngle angle) {
  return base::plain_number(angle.deg) + "° per side";
}

// A relation of two numbers is looked at only where each by itself can be worked with.
void look_at_bevel(const Bevel& bevel, std::vector<Problem>& problems) {
  const double bevel_deg = bevel.bevel_angle.deg;
  const double primary_deg = bevel.primary_angle.deg;
  const bool is_edge = bevel_deg >= kLeastBevelDeg && bevel_deg < 90;
  if (!is_edge) {
    problems.push_back(
        {.sentence = "a bevel angle of " + degrees_text(bevel.bevel_angle) + " is no edge",
         .place = {.column = "bevel_angle"},
         .accepted = "from 1° up to less than 90° per side"});
  }
  const bool is_face = primary_deg >= 0 && primary_deg < 90;
  if (!is_face || (is_edge && !(primary_deg <= bevel_deg - kLeastStepDeg))) {
    problems.push_back({.sentence = "the faces behind the bevel stand at " +
                                    degrees_text(bevel.primary_angle) +
                                    (is_edge ? ", the bevel at " + degrees_text(bevel.bevel_angle) +
                                                   ": the bevel must be steeper"
                                             : ": no bevel is steeper"),
                        .place = {.column = "primary_angle"},
                        .accepted = "from 0° up to 0.01° less than the bevel angle"});
  }
  const double thickness_mm = bevel.thickness_behind_edge_mm;
  if (!is_thickness(thickness_mm)) {
    problems.push_back({.sentence = "a thickness behind the edge of " +
                                    base::plain_number(thickness_mm) + " mm is no thickness",
                        .place = {.column = "thickness_behind_edge"},
                        .accepted = "0.001 to 1000 mm, usually 0.1 to 1 mm"});
  }
}

void look_at_damage(const EdgeDamage& damage, double thickness_mm, std::vector<Problem>& problems) {
  const auto is_length = [](double um) { return um >= 0 && um <= kDeepestDamageUm; };
  if (!is_length(damage.land_um)) {
    problems.push_back(
        {.sentence = "a land of " + base::plain_number(damage.land_um) + " µm is no width",
         .place = {.column = "land"},
         .accepted = "0 to 10,000 µm"});
  } else if (is_thickness(thickness_mm) && damage.land_um >= kUmPerMm * thickness_mm) {
    problems.push_back({.sentence = "a land of " + base::plain_number(damage.land_um) +
                                    " µm is as wide as the edge is thick: the bevel is worn away",
                        .place = {.column = "land"},
                        .accepted = "less than the thickness behind the edge"});
  }
  if (!is_length(damage.deepest_chip_um)) {
    problems.push_back(
        {.sentence = "a chip of " + base::plain_number(damage.deepest_chip_um) + " µm is no depth",
         .place = {.column = "deepest_chip"},
         .accepted = "0 to 10,000 µm"});
  }
}

double land_area_um2(double land_um, double tan_bevel) {
  return land_um * land_um / (4 * tan_bevel);
}

}  // namespace

std::vector<Problem> problems_of(const Bevel& bevel, const EdgeDamage& damage) {
  std::vector<Problem> problems;
  look_at_bevel(bevel, problems);
  look_at_damage(damage, bevel.thickness_behind_edge_mm, problems);
  return problems;
}

double land_recession_um(double land_um, trials::PerSideAngle bevel_angle) {
  return land_um / (2 * tangent(bevel_angle));
}

double apex_rise_um(const EdgeDamage& damage, trials::PerSideAngle bevel_angle) {
  return land_recession_um(damage.land_um, bevel_angle) + damage.deepest_chip_um;
}

base::Result<SteelToRemove> reset_bevel(const Bevel& bevel, const EdgeDamage& damage) {
  if (const auto problems = problems_of(bevel, damage); !problems.empty()) {
    return base::failed(problems.front());
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
  if (const auto problems = problems_of(bevel, damage); !problems.empty()) {
    return base::failed(problems.front());
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
                                     base::with_figures(h_um, 2) + " µm would be " +
                                     base::with_figures(shoulder_um, 3) +
                                     " µm thick, more than the bevel itself",
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
