#include "wear/refusals.h"

#include "base/plain_number.h"
#include "trials/angle_limit.h"
#include "wear/wedge.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::wear {

namespace {

using base::Problem;
using base::ProblemKind;

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr std::size_t kMostSegments = 20'000'000;
constexpr double kLeastAngleDeg = 1;
constexpr double kMostEvents = 1e8;  // expected in one run: hours of work

struct Bounds {
  double lo = 0;
  bool lo_counts = true;
  double hi = kInfinity;
  std::string_view in_words;
};

constexpr Bounds kAboveZero{.lo_counts = false, .in_words = "above 0"};
constexpr Bounds kFromZero{.in_words = "0 or more"};
constexpr Bounds kFromOne{.lo = 1, .in_words = "1 or more"};

class Checks {
 public:
  void number(std::string_view name, double found, const Bounds& bounds) {
    const bool holds = (bounds.lo_counts ? found >= bounds.lo : found > bounds.lo) &&
                       found <= bounds.hi && std::isfinite(found);
    if (!holds) refuse(std::string(name), base::plain_number(found), std::string(bounds.in_words));
  }

  void refuse(const std::string& name, const std::string& found, const std::string& accepted) {
    problems_.push_back({.kind = ProblemKind::bad_value,
                         .sentence = name + " is out of its range, at " + found,
                         .place = {.found = found},
                         .accepted = accepted});
  }

  [[nodiscard]] const std::vector<Problem>& problems() const { return problems_; }

 private:
  std::vector<Problem> problems_;
};

void check_edge(const EdgeStart& edge, Checks& checks) {
  const double angle = edge.apex_angle.deg;
  if (!(angle >= kLeastAngleDeg && angle <= trials::kWidestAnglePerSideDeg)) {
    checks.refuse("the apex angle per side",
                  base::plain_number(angle),
                  "from 1 to " + base::plain_number(trials::kWidestAnglePerSideDeg) + " degrees");
  }
  checks.number("the land's start width in um", edge.finish.land_width_um, kAboveZero);
  checks.number("the depth of the teeth in um", edge.finish.tooth_depth_um, kFromZero);
  checks.number("the spacing of the teeth in um", edge.finish.tooth_spacing_um, kAboveZero);
  checks.number("the length of the edge in mm", edge.length_mm, kAboveZero);
  checks.number("the length of a segment in um", edge.longest_segment_um, kAboveZero);
  if (!checks.problems().empty()) return;
  const double segments = edge.length_mm * 1e3 / segment_length_um(edge);
  checks.number("the number of segments",
                segments,
                {.hi = static_cast<double>(kMostSegments), .in_words = "20,000,000 at most"});
}

void check_medium(const CutMedium& medium, double segment_length_um, Checks& checks) {
  const AbrasiveWear& wear = medium.wear;
  checks.number("the wear rate in mm3/(N m)", wear.wear_rate_mm3_per_newton_metre, kFromZero);
  checks.number("the line load in N/mm", wear.line_load_newton_per_mm, kFromZero);
  checks.number("the sliding per cut in m", wear.sliding_m_per_cut, kFromZero);
  checks.number(
      "the exponent of the load", wear.load_growth_exponent, {.hi = 1, .in_words = "0 to 1"});
  checks.number("the compliance of the medium in um", wear.load_share_compliance_um, kAboveZero);
  const HardParticles& particles = medium.particles;
  checks.number("the hits per mm and cut", particles.hits_per_mm_cut, kFromZero);
  checks.number("the median diameter in um", particles.median_diameter_um, kAboveZero);
  checks.number("the spread of the diameters", particles.diameter_spread_ratio, kFromOne);
  checks.number("the pushback pressure in MPa", particles.pushback_pressure_mpa, kFromZero);
  checks.number("the scatter of the hits' angle in degrees",
                particles.angle_rms_deg,
                {.hi = 90, .in_words = "0 to 90"});
  checks.number(
      "the mean sideways load in N/mm", medium.twist.mean_line_load_newton_per_mm, kFromZero);
  // Some slack, so that a patch of 0.004 mm is as long as a segment of 4 um.
  const double least_patch_mm = segment_length_um * 1e-3;
  checks.number("the length of a twisted patch in mm",
                medium.twist.patch_length_mm,
                {.lo = least_patch_mm * (1 - 1e-9),
                 .in_words = "no shorter than a segment of the simulated edge"});
}

void check_work(const CuttingWork& work, double segment_length_um, Checks& checks) {
  if (work.cuts < 0) checks.refuse("a number of cuts", std::to_string(work.cuts), "0 or more");
  if (const auto* medium = std::get_if<CutMedium>(&work.what)) {
    check_medium(*medium, segment_length_um, checks);
  } else if (const auto* pause = std::get_if<WetPause>(&work.what)) {
    checks.number("the duration of a pause in hours", pause->duration_hour, kFromZero);
    checks.number(
        "the growth of the land in um per hour", pause->land_growth_um_per_hour, kFromZero);
  } else {
    for (const CuttingWork& part : std::get<MixedWork>(work.what).parts) {
      check_work(part, segment_length_um, checks);
    }
  }
}

void check_rules(const ApexSimulation& simulation, Checks& checks) {
  checks.number("the flow stress in MPa", simulation.steel.flow_stress_mpa, kAboveZero);
  if (!(simulation.steel.transition_section_um > 0)) {
    checks.refuse("the transition section in um",
                  base::plain_number(simulation.steel.transition_section_um),
                  "above 0, or infinite");
  }
  checks.number("the land gain of chips", simulation.damage.chip_land_gain, kFromZero);
  checks.number("the aspect of chips", simulation.damage.chip_aspect, kFromZero);
  checks.number("the life of a fold in cuts", simulation.damage.fold_life_cuts, kFromOne);
  checks.number("the share of a fold that is felt", simulation.reading.fold_share, kFromZero);
  checks.number("the push reach in um", simulation.reading.push_reach_um, kAboveZero);
  checks.number("the slice reach in um", simulation.reading.slice_reach_um, kAboveZero);
  checks.number("the gain of slopes", simulation.reading.slope_gain, kFromZero);
  checks.number("the cuts between sharings of the load",
                static_cast<double>(simulation.share_refresh_cuts),
                kFromOne);
}

// Hits, and patches loaded past what the start's land holds; lands only grow, so that no more come.
double expected_events_per_cut(const CutMedium& medium, const ApexSimulation& simulation) {
  const EdgeStart& edge = simulation.edge;
  const double hits = medium.particles.hits_per_mm_cut * edge.length_mm;
  const double mean_load = medium.twist.mean_line_load_newton_per_mm;
  if (mean_load <= 0) return hits;
  const double holds = twist_threshold_newton_per_mm(
      simulation.steel, wedge_of(edge.apex_angle), edge.finish.land_width_um);
  const double patches = std::max(1.0, std::round(edge.length_mm / medium.twist.patch_length_mm));
  return hits + patches * std::exp(-holds / mean_load);
}

void check_events(const ApexSimulation& simulation, Checks& checks) {
  double events = 0;
  for (const Stretch& stretch : stretches_of(simulation.schedule)) {
    if (stretch.medium == nullptr) continue;
    events +=
        static_cast<double>(stretch.cuts) * expected_events_per_cut(*stretch.medium, simulation);
  }
  if (events <= kMostEvents) return;
  checks.refuse("the number of hits and twisted patches expected on one edge",
                base::with_figures(events, 2),
                "100,000,000 at most: fewer hits per mm and cut, longer twisted patches, a shorter "
                "edge or fewer cuts");
}

void check_readings(const ApexSimulation& simulation, Checks& checks) {
  const long total = total_cuts(simulation.schedule);
  long before = -1;
  for (const long cuts : simulation.read_at_cuts) {
    if (cuts <= before || cuts > total) {
      checks.refuse("a cut to read at",
                    std::to_string(cuts),
                    "rising numbers from 0 to " + std::to_string(total));
      return;
    }
    before = cuts;
  }
}

}  // namespace

std::vector<Problem> problems_of(const ApexSimulation& simulation, const Ensemble& ensemble) {
  Checks checks;
  checks.number("the number of runs", ensemble.runs, kFromOne);
  check_edge(simulation.edge, checks);
  check_rules(simulation, checks);
  for (const CuttingWork& work : simulation.schedule) {
    check_work(work, segment_length_um(simulation.edge), checks);
  }
  if (checks.problems().empty()) check_events(simulation, checks);
  if (checks.problems().empty()) check_readings(simulation, checks);
  return checks.problems();
}

}  // namespace keenfall::wear
