#include "wear/reduced_apex.h"

#include "base/require.h"

#include <boost/math/quadrature/gauss.hpp>
#include <cmath>

namespace keenfall::wear {

namespace {

// Integral over a trace of depth(s) exp(-depth(s) / reach), depth a parabola, in um^2.
double weighted_section_um2(const Trace& trace, double reach_um) {
  const auto weighted_depth = [&](double place) {
    const double depth = trace.depth_um * (1 - place * place);
    return depth * std::exp(-depth / reach_um);
  };
  return trace.half_length_um *
         boost::math::quadrature::gauss<double, 8>::integrate(weighted_depth, -1.0, 1.0);
}

}  // namespace

double felt_land_um_mm(const HitDamage& damage,
                       const Wedge& wedge,
                       const DamageRules& rules,
                       const ReadingRules& reading) {
  const double widening = 2 * wedge.tangent;
  const double dented = widening * weighted_section_um2(damage.dent, reading.push_reach_um);
  const double chipped =
      widening * rules.chip_land_gain * weighted_section_um2(damage.chip, reading.push_reach_um);
  // A fold does not lower the land, so it counts in full: 2/3 of its height on average.
  const double folded =
      reading.fold_share * damage.fold.depth_um * 4.0 / 3 * damage.fold.half_length_um;
  return (dented + chipped + folded) * 1e-3;
}

ReducedApex reduced_apex(const ApexSimulation& simulation,
                         const CutMedium& medium,
                         const SingleHits& hits) {
  base::require(hits.hits >= 2, "a mean with its error needs two hits");
  const Wedge wedge = wedge_of(simulation.edge.apex_angle);
  const double land = simulation.edge.finish.land_width_um;
  numerics::RandomStream random(hits.seed, 0);
  double sum = 0;
  double squares = 0;
  for (int i = 0; i < hits.hits; ++i) {
    const ParticleHit hit = random_hit(medium.particles, 1, random);
    const HitDamage damage = damage_of(
        hit, {.steel = simulation.steel, .wedge = wedge, .rules = simulation.damage}, land);
    const double felt = felt_land_um_mm(damage, wedge, simulation.damage, simulation.reading);
    sum += felt;
    squares += felt * felt;
  }
  const auto count = static_cast<double>(hits.hits);
  const double mean = sum / count;
  const double square = squares / count;
  const double per_felt = medium.particles.hits_per_mm_cut / land;
  return {.wear_life_cuts = wear_life_cuts(medium.wear, wedge, land),
          .hit_slope_per_cut = per_felt * mean,
          .hit_slope_standard_error = per_felt * std::sqrt((square - mean * mean) / (count - 1)),
          .land_per_hit_um_mm = mean,
          .squared_land_per_hit_um2_mm2 = square};
}

double hit_scatter_cv(const ReducedApex& apex, const HitScatterAsked& asked) {
  const double hits = asked.hits_per_mm_cut * asked.edge_length_mm * asked.cuts;
  return std::sqrt(apex.squared_land_per_hit_um2_mm2 / hits) / apex.land_per_hit_um_mm;
}

}  // namespace keenfall::wear
