#include "workbench/reduced_curve.h"

#include "wear/reduced_apex.h"

#include <cmath>

namespace keenfall::workbench {

namespace {

std::vector<blunting::CurvePoint> mean_of(const std::vector<wear::SimulatedEdge>& edges) {
  std::vector<blunting::CurvePoint> mean;
  for (const wear::EdgeReading& reading : edges.front().readings) {
    mean.push_back({.cuts = static_cast<double>(reading.cuts)});
  }
  for (const wear::SimulatedEdge& edge : edges) {
    const double start = edge.readings.front().push_um;
    for (std::size_t i = 0; i < mean.size(); ++i) {
      mean[i].bluntness += edge.readings[i].push_um / start / static_cast<double>(edges.size());
    }
  }
  return mean;
}

// An edge that nothing wears has no wear scale.
std::optional<double> finite(double cuts) {
  return std::isfinite(cuts) ? std::optional(cuts) : std::nullopt;
}

}  // namespace

base::Result<ReducedCurve> reduced_curve(const wear::ApexScenario& scenario,
                                         const ReducedCurveAsked& asked,
                                         const base::Executor& executor,
                                         const base::ProgressReport& progress) {
  const wear::AbrasiveMedium* medium = wear::only_medium(scenario.work);
  if (medium == nullptr) {
    return base::failed({.kind = base::ProblemKind::unsuitable_data,
                         .sentence = "Mixed work has no wear of one rate, and the curve of wear "
                                     "and hits does not hold."});
  }
  if (medium->acts.wear.load_growth_exponent != 0) {
    return base::failed({.kind = base::ProblemKind::unsuitable_data,
                         .sentence =
                             "Where the load grows with the land, wear does not go with the "
                             "root of the cuts, and the curve of wear and hits does not "
                             "hold."});
  }
  const wear::ApexSimulation simulation = simulation_of(scenario, asked.steel, asked.cuts);
  const auto edges =
      simulate(simulation, {.runs = asked.runs, .seed = asked.seed}, executor, progress);
  if (!edges) return base::failed(edges.error());
  const wear::ReducedApex apex =
      wear::reduced_apex(simulation,
                         medium_for(*medium, scenario.steels[asked.steel]),
                         {.hits = asked.single_hits, .seed = asked.seed});
  ReducedCurve curve{.computed = {.wear_scale_cuts = finite(apex.wear_life_cuts),
                                  .hit_slope_per_cut = apex.hit_slope_per_cut},
                     .mean = mean_of(*edges)};
  auto fitted =
      blunting::fit_wear_and_hits(curve.mean, blunting::KnownWear{curve.computed.wear_scale_cuts});
  if (!fitted) return base::failed(fitted.error());
  curve.fitted = *fitted;
  return curve;
}

}  // namespace keenfall::workbench
