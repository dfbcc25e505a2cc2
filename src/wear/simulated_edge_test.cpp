#include "wear/simulated_edge.h"

#include "wear/half_keenness.h"
#include "wear/made_simulation_test.h"
#include "wear/plain_stepping_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::wear {
namespace {

using testing::HasSubstr;

ApexSimulation even_wear(long cuts) {
  ApexSimulation simulation = cut_in(wear_only(), cuts);
  simulation.edge.finish.tooth_depth_um = 0;
  return simulation;
}

// Closed form: w^2 - w0^2 = 4 t k P s x.
TEST(SimulatedEdge, WearsEvenlyAsTheClosedFormSays) {
  const EdgeReading last = simulated(even_wear(1000))[0].readings[1];
  const double t = std::tan(15 * std::acos(-1.0) / 180);
  const double expected = 4 * t * 1.5e-7 * 1 * 0.02 * 1000 * 1e6;

  for (const double land : last.section->land_width_um) {
    EXPECT_NEAR((land * land - 0.25) / expected, 1, 1e-13);
  }
  EXPECT_NEAR(last.damage.recession_um, (last.damage.mean_land_um - 0.5) / (2 * t), 1e-12);
}

TEST(SimulatedEdge, HalvesItsKeennessInThreeWearLives) {
  ApexSimulation simulation = even_wear(1000);
  for (long cut = 1; cut < 1000; ++cut) {
    simulation.read_at_cuts.insert(simulation.read_at_cuts.end() - 1, cut);
  }
  const auto edges = simulated(simulation);

  const double life = wear_life_cuts(wear_only().wear, wedge_of({15}), 0.5);
  EXPECT_NEAR(cuts_to_level(edges[0], ApexReading::push).value(), 3 * life, 1e-3);
  EXPECT_NEAR(cuts_to_level(edges[0], ApexReading::slice).value(), 3 * life, 1e-3);
}

// The closed form of a load that grows with the land, through 50 sharings of the load.
TEST(SimulatedEdge, FollowsALoadThatGrowsAsTheEdgeDulls) {
  ApexSimulation simulation = even_wear(1000);
  auto& wear = std::get<CutMedium>(simulation.schedule[0].what).wear;
  wear.load_growth_exponent = 0.5;

  const double land = simulated(simulation)[0].readings[1].damage.mean_land_um;

  EXPECT_NEAR(land / worn_land_um(wear, wedge_of({15}), 0.5, 1000), 1, 1e-12);
}

double booked_um3(const MetalLost& lost) {
  return lost.worn_um3 + lost.dented_um3 + lost.folded_um3 + lost.chipped_um3 + lost.corroded_um3;
}

// Sum of (w^2 - w0^2) / (4 t): what the lands tell against what was booked event by event.
double told_by_lands_um3(const EdgeLine& line, double start_land_um, double tangent) {
  double sum = 0;
  for (const double land : line.land_width_um) {
    sum += (land * land - start_land_um * start_land_um) / (4 * tangent);
  }
  return sum * line.segment_length_um;
}

TEST(SimulatedEdge, LosesAsMuchMetalAsItsLandsTell) {
  for (const auto& steel : {hard_chipping_steel(), tough_bending_steel()}) {
    ApexSimulation simulation = cut_in(gritty(), 300);
    simulation.steel = steel;
    simulation.schedule.push_back(
        {.what = WetPause{.duration_hour = 10, .land_growth_um_per_hour = 0.02}});
    simulation.schedule.push_back({.what = wear_only(), .cuts = 50});
    simulation.read_at_cuts = {0, 350};

    const SimulatedEdge edge = simulated(simulation)[0];

    const double told = told_by_lands_um3(*edge.readings[1].section, 0.5, wedge_of({15}).tangent);
    EXPECT_NEAR(booked_um3(edge.lost) / told, 1, 1e-12);
    EXPECT_GT(edge.lost.corroded_um3, 0);
  }
}

TEST(SimulatedEdge, StaysAsItWasWhereNothingHappens) {
  ApexSimulation simulation = cut_in({}, 500);

  const SimulatedEdge edge = simulated(simulation)[0];

  EXPECT_EQ(*edge.readings[1].section, started_edge(simulation.edge));
  EXPECT_EQ(edge.counts, DamageCounts{});
}

TEST(SimulatedEdge, NeverChipsWhereNoCrackCanRun) {
  ApexSimulation simulation = cut_in(gritty(), 100);
  simulation.steel.transition_section_um = std::numeric_limits<double>::infinity();

  const SimulatedEdge edge = simulated(simulation)[0];

  EXPECT_EQ(edge.counts.chips, 0);
  EXPECT_GT(edge.counts.folds, 100);
}

// Hardness without bound at the same toughness: it can only break.
TEST(SimulatedEdge, NeitherFoldsNorDentsWhereNothingYields) {
  ApexSimulation simulation = cut_in(gritty(), 100);
  simulation.steel = steel_of(1e7, 14);

  const SimulatedEdge edge = simulated(simulation)[0];

  EXPECT_EQ(edge.counts.folds, 0);
  EXPECT_LT(edge.lost.dented_um3, 1e-3 * edge.lost.chipped_um3);
  EXPECT_GT(edge.counts.chips, 100);
}

// The same hits and loads, every segment at every cut.
TEST(SimulatedEdge, IsTheSameAsPlainSteppingCutByCut) {
  for (const auto& steel : {hard_chipping_steel(), tough_bending_steel()}) {
    ApexSimulation simulation = cut_in(gritty(), 90);
    simulation.steel = steel;
    simulation.edge.length_mm = 2;
    simulation.edge.apex_angle = {17};
    auto& medium = std::get<CutMedium>(simulation.schedule[0].what);
    medium.twist = {.mean_line_load_newton_per_mm = 0.2, .patch_length_mm = 0.25};
    simulation.schedule.push_back({.what = wear_only(), .cuts = 33});
    simulation.schedule.push_back({.what = gritty(), .cuts = 7});
    simulation.read_at_cuts = {0, 1, 19, 20, 21, 90, 100, 130};

    const SimulatedEdge edge = simulated(simulation, 1, 4)[0];
    const auto plain = plainly_stepped(simulation, {4}, 0);

    EXPECT_GT(edge.counts.twists, 0);
    EXPECT_GT(edge.counts.chips + edge.counts.folds, 20);
    for (const EdgeReading& reading : edge.readings) {
      const EdgeLine& expected = plain.at(reading.cuts);
      for (std::size_t i = 0; i < expected.land_width_um.size(); ++i) {
        ASSERT_NEAR(reading.section->land_width_um[i], expected.land_width_um[i], 1e-9);
        ASSERT_NEAR(reading.section->height_um[i], expected.height_um[i], 1e-9);
        ASSERT_NEAR(reading.section->fold_height_um[i], expected.fold_height_um[i], 1e-9);
        ASSERT_NEAR(reading.section->chip_depth_um[i], expected.chip_depth_um[i], 1e-9);
      }
    }
  }
}

TEST(SimulatedEdge, DoesNotDependOnTheThreadsOrOnTheNumberOfRuns) {
  ApexSimulation simulation = cut_in(gritty(), 60);
  simulation.edge.length_mm = 5;

  const auto one = simulate(simulation, {.runs = 6, .seed = {2}}, base::one_thread()).value();
  const auto many = simulate(simulation, {.runs = 9, .seed = {2}}, base::threads(3)).value();

  for (std::size_t run = 0; run < one.size(); ++run) EXPECT_EQ(one[run], many[run]);
  EXPECT_NE(one[0], one[1]);
}

TEST(SimulatedEdge, IsReadWithoutBeingChanged) {
  ApexSimulation simulation = cut_in(gritty(), 60);
  const SimulatedEdge once = simulated(simulation)[0];
  simulation.read_at_cuts = {0, 7, 20, 33, 60};

  const SimulatedEdge often = simulated(simulation)[0];

  EXPECT_EQ(often.readings.back(), once.readings.back());
}

// Work in one medium split in two, and as a mix of one part, is the same work.
TEST(SimulatedEdge, CutsAMixAsTheWorkItIsMadeOf) {
  const ApexSimulation whole = cut_in(gritty(), 60);
  ApexSimulation mixed = whole;
  mixed.schedule = {{.what = MixedWork{.parts = {{.what = gritty(), .cuts = 60}}}, .cuts = 60}};

  EXPECT_EQ(simulated(mixed), simulated(whole));
}

// All lengths in another unit: a thousand times as long, forces a million times, k P s a million.
TEST(SimulatedEdge, DoesNotDependOnTheUnitOfLength) {
  ApexSimulation simulation = cut_in(gritty(), 60);
  simulation.edge.length_mm = 2;
  ApexSimulation large = simulation;
  large.edge.length_mm *= 1e3;
  large.edge.longest_segment_um *= 1e3;
  large.edge.finish = {.land_width_um = 500, .tooth_depth_um = 600, .tooth_spacing_um = 8000};
  large.steel.transition_section_um *= 1e3;
  large.reading.push_reach_um *= 1e3;
  large.reading.slice_reach_um *= 1e3;
  large.visible_chip_um *= 1e3;
  auto& medium = std::get<CutMedium>(large.schedule[0].what);
  medium.wear.wear_rate_mm3_per_newton_metre *= 1e6;
  medium.wear.load_share_compliance_um *= 1e3;
  medium.particles.hits_per_mm_cut *= 1e-3;
  medium.particles.median_diameter_um *= 1e3;
  medium.twist.mean_line_load_newton_per_mm *= 1e3;
  medium.twist.patch_length_mm *= 1e3;

  const auto small_edge = simulated(simulation)[0];
  const auto large_edge = simulated(large)[0];

  EXPECT_EQ(large_edge.counts, small_edge.counts);
  EXPECT_NEAR(large_edge.readings[1].push_um / small_edge.readings[1].push_um, 1e3, 1e-6);
  EXPECT_NEAR(large_edge.readings[1].slice_um / small_edge.readings[1].slice_um, 1e3, 1e-6);
}

TEST(SimulatedEdge, StopsWhereItIsAskedTo) {
  const auto stopped = simulate(
      cut_in(gritty(), 10), {.runs = 50}, base::one_thread(), [](const base::Progress& at) {
        return at.fraction_done < 0.1;
      });

  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.error().kind, base::ProblemKind::interrupted);
}

std::string refused(const ApexSimulation& simulation) {
  const auto made = simulate(simulation, {}, base::one_thread());
  return made ? "not refused" : in_words(made.error());
}

TEST(SimulatedEdge, RefusesTwistedPatchesShorterThanASegment) {
  CutMedium medium = gritty();
  medium.twist.patch_length_mm = 0.004;
  EXPECT_EQ(refused(cut_in(medium, 10)), "not refused");
  for (const double patch_mm : {0.0039, 1e-6, 1e-300}) {
    medium.twist.patch_length_mm = patch_mm;
    EXPECT_THAT(refused(cut_in(medium, 10)), HasSubstr("the length of a twisted patch in mm"));
  }
}

// 1e7 hits per mm and cut on 20 mm are 2e8 a cut. Under a load so large that every patch gives way,
// 5000 patches of 0.004 mm give 1e8 events after 20,000 cuts.
TEST(SimulatedEdge, RefusesMoreEventsThanCanBeWorkedThrough) {
  CutMedium hits = wear_only();
  hits.particles.hits_per_mm_cut = 1e7;
  CutMedium twists = wear_only();
  twists.twist = {.mean_line_load_newton_per_mm = 1e9, .patch_length_mm = 0.004};

  EXPECT_THAT(refused(cut_in(hits, 1)), HasSubstr("hits and twisted patches expected on one edge"));
  EXPECT_EQ(simulate(cut_in(hits, 1), {}, base::one_thread()).error().place.found, "200000000");
  EXPECT_THAT(refused(cut_in(twists, 20'010)), HasSubstr("100,000,000 at most"));
  EXPECT_EQ(refused(cut_in(twists, 20)), "not refused");
}

TEST(SimulatedEdge, RefusesAnAngleThatIsNoEdge) {
  ApexSimulation simulation = cut_in(gritty(), 10);
  for (const double deg : {1e-310, 0.0, 0.99, 90.0}) {
    simulation.edge.apex_angle = {deg};
    EXPECT_THAT(refused(simulation), HasSubstr("from 1 to 45 degrees")) << deg;
  }
  simulation.edge.apex_angle = {1};
  EXPECT_EQ(refused(simulation), "not refused");
}

TEST(SimulatedEdge, RefusesWhatIsOutOfItsRangeByName) {
  ApexSimulation simulation = cut_in(gritty(), 10);
  simulation.edge.finish.land_width_um = 0;
  const auto no_land = simulate(simulation, {}, base::one_thread());
  simulation = cut_in(gritty(), 10);
  simulation.read_at_cuts = {0, 11};
  const auto too_late = simulate(simulation, {}, base::one_thread());
  const auto no_runs = simulate(cut_in(gritty(), 10), {.runs = 0}, base::one_thread());

  ASSERT_FALSE(no_land);
  EXPECT_THAT(no_land.error().sentence, HasSubstr("the land's start width in um"));
  ASSERT_FALSE(too_late);
  EXPECT_THAT(too_late.error().accepted, HasSubstr("from 0 to 10"));
  ASSERT_FALSE(no_runs);
  EXPECT_THAT(no_runs.error().sentence, HasSubstr("number of runs"));
}

TEST(SimulatedEdge, RefusesASteelThatAlwaysCracks) {
  ApexSimulation simulation = cut_in(gritty(), 1);
  simulation.steel.transition_section_um = 0;

  EXPECT_THAT(refused(simulation), HasSubstr("the transition section in um"));
}

TEST(SimulatedEdge, MayBeOneSegmentAndOneCut) {
  ApexSimulation simulation = cut_in(gritty(), 1);
  simulation.edge.length_mm = 0.004;

  EXPECT_EQ(simulated(simulation)[0].readings[1].section->land_width_um.size(), 1U);
}

}  // namespace
}  // namespace keenfall::wear
