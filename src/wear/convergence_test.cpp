#include "numerics/summaries.h"
#include "wear/made_simulation_test.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::wear {
namespace {

struct MeanReading {
  double mean = 0;
  double standard_error = 0;
};

std::vector<double> readings_of(const ApexSimulation& simulation,
                                double EdgeReading::*which = &EdgeReading::push_um) {
  std::vector<double> readings;
  for (const SimulatedEdge& edge : simulated(simulation, 200)) {
    readings.push_back(edge.readings.back().*which);
  }
  return readings;
}

MeanReading after_fifteen_gritty_cuts(const ApexSimulation& simulation) {
  const std::vector<double> readings = readings_of(simulation);
  return {.mean = numerics::mean_of(readings),
          .standard_error = std::sqrt(numerics::variance_of(readings) / 200)};
}

ApexSimulation with_segments_of(double longest_segment_um) {
  ApexSimulation simulation = cut_in(gritty(), 15);
  simulation.keep_sections = false;
  simulation.edge.finish.tooth_depth_um = 0;
  simulation.edge.longest_segment_um = longest_segment_um;
  return simulation;
}

// Root mean square over the edges of one reading less the other.
double rms_difference(const std::vector<double>& some, const std::vector<double>& others) {
  double sum = 0;
  for (std::size_t i = 0; i < some.size(); ++i) {
    sum += (some[i] - others[i]) * (some[i] - others[i]);
  }
  return std::sqrt(sum / static_cast<double>(some.size()));
}

// The same hits on finer and finer segments: edge by edge the error falls by a third or more each
// time the length is halved, and at 4 um it is far below what edges scatter by.
TEST(Convergence, TheErrorShrinksWithTheLengthOfSegments) {
  const std::vector<double> fine = readings_of(with_segments_of(0.5));
  double error = rms_difference(readings_of(with_segments_of(32)), fine);
  for (const double length_um : {16.0, 8.0, 4.0, 2.0}) {
    const double finer = rms_difference(readings_of(with_segments_of(length_um)), fine);
    EXPECT_LT(finer, error / 1.5) << length_um;
    error = finer;
    if (length_um == 4) {
      EXPECT_LT(finer, std::sqrt(numerics::variance_of(fine)) / 100);
    }
  }
}

// With the teeth of the coarse finish, on 250 of them so that each hit stays where it is: what a
// slice reads, which lives from slopes. Segments of 16, 8, 4 and 2 um are asked; 14, 7, 3.5 and 2
// go into half a tooth.
TEST(Convergence, OfASliceOnTeethTheErrorShrinksToo) {
  const auto slices = [](double longest_segment_um) {
    ApexSimulation simulation = with_segments_of(longest_segment_um);
    simulation.edge.finish = {.land_width_um = 0.8, .tooth_depth_um = 6, .tooth_spacing_um = 28};
    simulation.edge.length_mm = 250 * 0.028;
    return readings_of(simulation, &EdgeReading::slice_um);
  };
  const std::vector<double> fine = slices(0.25);
  double error = rms_difference(slices(16), fine);
  for (const double length_um : {8.0, 4.0, 2.0}) {
    const double finer = rms_difference(slices(length_um), fine);
    EXPECT_LT(finer, error / 1.5) << length_um;
    error = finer;
  }
}

// Sharing the load anew at every cut, and every 20 cuts.
TEST(Convergence, SharingTheLoadEveryTwentyCutsIsOftenEnough) {
  ApexSimulation simulation = with_segments_of(4);
  simulation.edge.finish = {.land_width_um = 0.8, .tooth_depth_um = 6, .tooth_spacing_um = 28};
  simulation.schedule[0].cuts = 100;
  simulation.read_at_cuts = {0, 100};
  const MeanReading seldom = after_fifteen_gritty_cuts(simulation);
  simulation.share_refresh_cuts = 1;
  const MeanReading often = after_fifteen_gritty_cuts(simulation);

  EXPECT_NEAR(seldom.mean / often.mean, 1, 0.02);
}

// On a fresh edge each hit chips or not by itself, so chips are Poisson too: variance over mean 1.
TEST(Convergence, ChipsOfAFreshEdgeAreThinnedFromTheHits) {
  ApexSimulation simulation = cut_in(gritty(), 1);
  simulation.keep_sections = false;
  std::vector<double> chips;
  for (const SimulatedEdge& edge : simulated(simulation, 3000)) {
    chips.push_back(static_cast<double>(edge.counts.chips));
  }
  const double mean = numerics::mean_of(chips);

  EXPECT_GT(mean, 0.5);
  EXPECT_NEAR(numerics::variance_of(chips) / mean, 1, 4 * std::sqrt(2.0 / 3000));
}

}  // namespace
}  // namespace keenfall::wear
