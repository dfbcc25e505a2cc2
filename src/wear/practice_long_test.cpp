// Holds the simulator's lives to what a trial computation in another language gave with the same
// constants (docs/methods/apex.md): 200 gritty or 40 clean runs of 20 mm. Its constants were tuned
// to practice, so agreement here says that the model is the same, not that it is right.
#include "numerics/summaries.h"
#include "wear/apex_scenario.h"
#include "wear/reduced_apex.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace keenfall::wear {
namespace {

ApexScenario two_steels(std::size_t medium, double angle_deg, const EdgeFinish& finish) {
  return {.steels = {materials::find_microstructure("AISI A11").value(),
                     materials::find_microstructure("75Ni8").value()},
          .work = work_in(known_media()[medium]),
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

// What 100 gritty cuts do to 40 edges of 20 mm.
std::vector<SimulatedEdge> gritty_edges(std::size_t steel, double angle_deg) {
  ApexSimulation simulation = simulation_of(two_steels(1, angle_deg, fine_finish()), steel, 100);
  simulation.read_at_cuts = {0, 100};
  return simulate(simulation, {.runs = 40, .seed = {11}}, base::threads(2)).value();
}

// The row of the method page: fewer that show, shallower, less rolled.
TEST(Practice, ALargerAngleMakesChipsFewerAndShallower) {
  const auto narrow = gritty_edges(0, 15);
  const auto wide = gritty_edges(0, 25);

  EXPECT_NEAR(mean_damage(narrow, &DamageSummary::deepest_chip_um), 121, 6);
  EXPECT_NEAR(mean_damage(wide, &DamageSummary::deepest_chip_um), 60, 4);
  EXPECT_NEAR(mean_damage(narrow, &DamageSummary::chips_per_mm), 2.6, 0.2);
  EXPECT_NEAR(mean_damage(wide, &DamageSummary::chips_per_mm), 1.3, 0.15);
  EXPECT_NEAR(mean_damage(gritty_edges(1, 15), &DamageSummary::rolled_fraction), 0.129, 0.006);
  EXPECT_NEAR(mean_damage(gritty_edges(1, 25), &DamageSummary::rolled_fraction), 0.062, 0.005);
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

double log_slope(double from, double to, double from_cuts, double to_cuts) {
  return std::log(to / from) / std::log(to_cuts / from_cuts);
}

// What hits add to a push reading, in starts: the mean of many edges less what wear alone does.
struct Growth {
  std::vector<double> chips_per_mm;
  std::vector<double> hit_part;
};

Growth growth_at(const std::vector<long>& cuts) {
  const ApexScenario gritty = two_steels(1, 15, fine_finish());
  ApexSimulation simulation = simulation_of(gritty, 0, cuts.back());
  simulation.read_at_cuts = cuts;
  const double wear_life_cuts =
      reduced_apex(
          simulation, medium_for(*only_medium(gritty.work), gritty.steels[0]), {.hits = 2000})
          .wear_life_cuts;
  const auto edges = simulate(simulation, {.runs = 30, .seed = {7}}, base::one_thread()).value();
  Growth growth;
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    double chips = 0;
    double push = 0;
    for (const SimulatedEdge& edge : edges) {
      chips += edge.readings[i].damage.chips_per_mm / 30;
      push += edge.readings[i].push_um / edge.readings[0].push_um / 30;
    }
    growth.chips_per_mm.push_back(chips);
    growth.hit_part.push_back(push - std::sqrt(1 + static_cast<double>(cuts[i]) / wear_life_cuts));
  }
  return growth;
}

// Chips grow about as x^1 at first (independent hits); then they run into each other. The row of
// docs/methods/apex.md, whose figures this holds loosely: nothing was tuned to it.
TEST(Practice, ChipsGrowAboutAsTheCutsAtFirstAndSlowerLater) {
  const Growth growth = growth_at({0, 1, 20, 100, 200, 1000, 2000, 3000});
  const auto slope = [](const std::vector<double>& of, std::size_t from, double x, double y) {
    return log_slope(of[from], of[from + 1], x, y);
  };

  EXPECT_NEAR(slope(growth.chips_per_mm, 1, 1, 20), 0.96, 0.15);
  EXPECT_NEAR(slope(growth.hit_part, 1, 1, 20), 1.0, 0.15);
  EXPECT_NEAR(slope(growth.chips_per_mm, 3, 100, 200), 0.42, 0.15);
  EXPECT_NEAR(slope(growth.hit_part, 3, 100, 200), 0.83, 0.15);
  EXPECT_NEAR(slope(growth.hit_part, 6, 2000, 3000), 0.43, 0.15);
}

// Where the model fails: no level is reached. The count of chips falls again, since two that meet
// count as one, and what is read goes on growing.
TEST(Practice, ChipsReachNoLevelInTheModel) {
  const Growth growth = growth_at({0, 200, 1000, 3000});

  EXPECT_NEAR(growth.chips_per_mm[1], 3.4, 0.5);
  EXPECT_LT(growth.chips_per_mm[2], 0.7 * growth.chips_per_mm[1]);
  EXPECT_LT(growth.chips_per_mm[3], 0.2 * growth.chips_per_mm[1]);
  EXPECT_GT(growth.hit_part[3], 1.5 * growth.hit_part[2]);
}

// The scatter of lives grows as the used length shrinks, about with its root: the row of
// docs/methods/apex.md. An sd from 400 edges is known to 3.5 %; four of these are allowed.
TEST(Practice, LivesScatterMoreOnAShorterEdge) {
  struct Scatter {
    double length_mm, push_log_sd, slice_log_sd;
  };
  const auto log_sd = [](const std::vector<SimulatedEdge>& edges, ApexReading reading) {
    std::vector<double> logs;
    for (const SimulatedEdge& edge : edges) {
      logs.push_back(std::log(cuts_to_level(edge, reading).value()));
    }
    return std::sqrt(numerics::variance_of(logs));
  };
  for (const Scatter& known : {Scatter{2, 0.785, 0.110},
                               Scatter{5, 0.466, 0.070},
                               Scatter{10, 0.317, 0.048},
                               Scatter{20, 0.233, 0.035},
                               Scatter{50, 0.142, 0.023}}) {
    ApexScenario gritty = two_steels(1, 15, fine_finish());
    gritty.edge.length_mm = known.length_mm;
    const auto edges =
        simulate(simulation_of(gritty, 0, 200), {.runs = 400, .seed = {8}}, base::one_thread())
            .value();
    EXPECT_NEAR(log_sd(edges, ApexReading::push) / known.push_log_sd, 1, 0.14) << known.length_mm;
    EXPECT_NEAR(log_sd(edges, ApexReading::slice) / known.slice_log_sd, 1, 0.14) << known.length_mm;
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
