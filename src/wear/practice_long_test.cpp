// Holds the simulator's lives to what a trial computation in another language gave with the same
// constants (docs/methods/apex.md): 200 gritty or 40 clean runs of 20 mm. Its constants were tuned
// to practice, so agreement here says that the model is the same, not that it is right.
#include "wear/apex_scenario.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace keenfall::wear {
namespace {

ApexScenario two_steels(std::size_t medium, double angle_deg, const EdgeFinish& finish) {
  return {.steels = {materials::find_microstructure("AISI A11").value(),
                     materials::find_microstructure("75Ni8").value()},
          .medium = known_media()[medium],
          .edge = {.finish = finish, .apex_angle = {angle_deg}}};
}

struct Row {
  double angle_deg;
  bool coarse;
  double clean_hard, clean_tough, gritty_hard, gritty_tough, gritty_slice_ratio;
};

// Medians against means of logs, and 200 runs that scatter by 0.25 in logs on both sides: 8 %.
TEST(Practice, LivesAreThoseOfAnotherComputation) {
  for (const Row& row : {Row{15, false, 212, 51.9, 11.5, 9.5, 1.61},
                         Row{25, false, 125, 29.9, 12.3, 10.7, 1.70},
                         Row{15, true, 533, 131, 22.2, 20.9, 1.47},
                         Row{25, true, 0, 0, 24.6, 24.4, 1.61}}) {
    const EdgeFinish finish = row.coarse ? coarse_finish() : fine_finish();
    const ApexScenario gritty = two_steels(1, row.angle_deg, finish);
    const LifeAsked asked{.runs = 200, .seed = {7}};
    EXPECT_NEAR(*median_life_cuts(gritty, 0, asked) / row.gritty_hard, 1, 0.08);
    EXPECT_NEAR(*median_life_cuts(gritty, 1, asked) / row.gritty_tough, 1, 0.08);
    EXPECT_NEAR(*life_ratio(gritty, {.reading = ApexReading::slice, .runs = 200, .seed = {7}}) /
                    row.gritty_slice_ratio,
                1,
                0.08);
    if (row.clean_hard == 0) continue;
    const ApexScenario clean = two_steels(0, row.angle_deg, finish);
    EXPECT_NEAR(*median_life_cuts(clean, 0, {.runs = 40}) / row.clean_hard, 1, 0.08);
    EXPECT_NEAR(*median_life_cuts(clean, 1, {.runs = 40}) / row.clean_tough, 1, 0.08);
  }
}

double mean_damage(const std::vector<SimulatedEdge>& edges, double DamageSummary::*what) {
  double sum = 0;
  for (const SimulatedEdge& edge : edges) sum += edge.readings.back().damage.*what;
  return sum / static_cast<double>(edges.size());
}

struct Scattered {
  double mean = 0;
  double sd = 0;  // of one edge
};

struct Damage {
  std::size_t steel = 0;
  Scattered chips_per_mm;
  Scattered rolled_fraction;
};

// Chips deeper than 10 um per mm and rolled share after 100 gritty cuts, within 4 standard errors
// of 4,000 runs of this simulator with another seed: only what docs/methods/apex.md says is held.
// The other computation gave 3.2 and 0 chips, rolled 0.014 and 0.119: beyond chance from these.
TEST(Practice, DamageStaysWhatTheDocsSay) {
  const ApexScenario gritty = two_steels(1, 15, fine_finish());
  const auto allowed = [](const Scattered& figure) { return 4 * figure.sd / std::sqrt(200.0); };
  for (const Damage& known : {Damage{0, {2.634, 0.27}, {0.0118, 0.0039}},
                              Damage{1, {0.0008, 0.0064}, {0.1283, 0.0195}}}) {
    const auto edges =
        simulate(
            simulation_of(gritty, known.steel, 100), {.runs = 200, .seed = {7}}, base::one_thread())
            .value();
    EXPECT_NEAR(mean_damage(edges, &DamageSummary::chips_per_mm),
                known.chips_per_mm.mean,
                allowed(known.chips_per_mm));
    EXPECT_NEAR(mean_damage(edges, &DamageSummary::rolled_fraction),
                known.rolled_fraction.mean,
                allowed(known.rolled_fraction));
  }
}

// A coarse finish lasts longer in slices only through the gain of slopes, at one common reading.
TEST(Practice, ACoarseFinishGainsInSlicesOnlyThroughItsSlopes) {
  const auto cuts_to_common = [](const EdgeFinish& finish, double gain) {
    ApexScenario scenario = two_steels(0, 15, finish);
    scenario.reading.slope_gain = gain;
    const auto edges =
        simulate(simulation_of(scenario, 0, 3000), {.runs = 5}, base::one_thread()).value();
    ApexScenario fine = two_steels(0, 15, fine_finish());
    fine.reading.slope_gain = gain;
    const double start = simulate(simulation_of(fine, 0, 1), {.runs = 1}, base::one_thread())
                             .value()[0]
                             .readings[0]
                             .slice_um;
    double cuts = 0;
    for (const SimulatedEdge& edge : edges) {
      cuts += *cuts_to_level(edge, ApexReading::slice, 3 * start / edge.readings[0].slice_um) / 5;
    }
    return cuts;
  };
  const auto gain = [&](double slope_gain) {
    return cuts_to_common(coarse_finish(), slope_gain) / cuts_to_common(fine_finish(), slope_gain);
  };

  EXPECT_LT(gain(0), 1);
  EXPECT_GT(gain(1), 1.05);
  EXPECT_GT(gain(3), 1.5);
}

}  // namespace
}  // namespace keenfall::wear
