#include "wear/reduced_apex.h"

#include "numerics/summaries.h"
#include "wear/made_simulation_test.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::wear {
namespace {

CutMedium hits_only() {
  CutMedium medium = gritty();
  medium.wear = {};
  medium.twist = {};
  return medium;
}

struct Rise {
  double mean = 0;
  double cv = 0;
};

// Of the push reading over its start, after three cuts.
Rise simulated_rise(ApexSimulation simulation, double length_mm, int runs) {
  simulation.edge.length_mm = length_mm;
  simulation.edge.finish.tooth_depth_um = 0;
  simulation.keep_sections = false;
  std::vector<double> rises;
  for (const SimulatedEdge& edge : simulated(simulation, runs)) {
    rises.push_back(edge.readings[1].push_um / edge.readings[0].push_um - 1);
  }
  const double mean = numerics::mean_of(rises);
  return {.mean = mean, .cv = std::sqrt(numerics::variance_of(rises)) / mean};
}

// Compound Poisson: slope within 15 % (folds overlap, the land thickens), CV within 16 %.
TEST(ReducedApex, FindsTheSlopeAndScatterOfSimulatedEdges) {
  for (const auto& steel : {hard_chipping_steel(), tough_bending_steel()}) {
    ApexSimulation simulation = cut_in(hits_only(), 3);
    simulation.steel = steel;
    const ReducedApex reduced = reduced_apex(simulation, hits_only(), {.hits = 200000});
    const Rise rise = simulated_rise(simulation, 20, 3000);
    const double cv =
        hit_scatter_cv(reduced, {.hits_per_mm_cut = 0.4, .edge_length_mm = 20, .cuts = 3});

    EXPECT_NEAR(rise.mean / (3 * reduced.hit_slope_per_cut), 1, 0.15);
    EXPECT_NEAR(rise.cv / cv, 1, 0.16);
  }
}

TEST(ReducedApex, ScattersWithOneOverTheRootOfTheLength) {
  const ApexSimulation simulation = cut_in(hits_only(), 3);

  const double ratio =
      simulated_rise(simulation, 5, 600).cv / simulated_rise(simulation, 20, 600).cv;

  EXPECT_NEAR(ratio, 2, 0.3);
}

// Closed form: a parabola far shallower than the reach has the section 4/3 d a.
TEST(ReducedApex, IntegratesTheLandOfOneHit) {
  const Wedge wedge = wedge_of({15});
  const HitDamage chip{.chip = {.depth_um = 2, .half_length_um = 7}};
  const HitDamage fold{.fold = {.depth_um = 2, .half_length_um = 7}};

  EXPECT_NEAR(felt_land_um_mm(chip, wedge, {}, {.push_reach_um = 1e9}),
              2 * wedge.tangent * 4.0 / 3 * 2 * 7 * 1e-3,
              1e-10);
  EXPECT_NEAR(
      felt_land_um_mm(fold, wedge, {}, {.fold_share = 0.5}), 0.5 * 4.0 / 3 * 14 * 1e-3, 1e-12);
}

TEST(ReducedApex, IsWearAloneWhereNothingHits) {
  const ReducedApex reduced = reduced_apex(cut_in(wear_only(), 10), wear_only(), {.hits = 1000});

  EXPECT_EQ(reduced.hit_slope_per_cut, 0);
  EXPECT_NEAR(reduced.wear_life_cuts, wear_life_cuts(wear_only().wear, wedge_of({15}), 0.5), 1e-12);
}

}  // namespace
}  // namespace keenfall::wear
