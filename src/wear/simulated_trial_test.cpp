#include "wear/simulated_trial.h"

#include "materials/abrasion_resistance.h"
#include "numerics/summaries.h"
#include "wear/trial_plan_refusals.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>

namespace keenfall::wear {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;

AbrasiveMedium only_wearing(const std::string& name) {
  AbrasiveMedium medium{.name = name,
                        .abrasive_hv = 700,
                        .groove_width_um = 1,
                        .reference_wear_rate_mm3_per_newton_metre = 6e-7};
  medium.acts.particles.hits_per_mm_cut = 0;
  return medium;
}

// Shallow teeth would share the load unevenly; without them every segment wears alike.
TrialPlan two_steels(const AbrasiveMedium& medium) {
  return {.steels = {materials::find_microstructure("AISI A11").value(),
                     materials::find_microstructure("75Ni8").value()},
          .works = {work_in(medium)},
          .edges = {{.finish_name = "even", .finish = {.land_width_um = 0.5}}},
          .runs_each = 4,
          .blocks = 2,
          .longest_cuts = 255,
          .edge_length_mm = 2,
          .seed = {3},
          .truth_edges = 11};
}

SimulatedTrial cut(const TrialPlan& plan) {
  return simulated_trial(plan, base::one_thread()).value();
}

std::string refused_sentence(const TrialPlan& plan) {
  const auto made = simulated_trial(plan, base::one_thread());
  return made ? "not refused" : in_words(made.error());
}

TEST(SimulatedTrials, AreTheSameOnOneThreadAndOnSeveral) {
  const TrialPlan plan = two_steels(known_media()[1]);

  const SimulatedTrial one = cut(plan);
  const SimulatedTrial several = simulated_trial(plan, base::threads(4)).value();

  EXPECT_EQ(one.trial, several.trial);
  EXPECT_EQ(one.ratios.at(0).ratio, several.ratios.at(0).ratio);
}

TEST(SimulatedTrials, DifferBySeed) {
  TrialPlan plan = two_steels(known_media()[1]);
  const SimulatedTrial one = cut(plan);
  plan.seed = {4};

  EXPECT_NE(cut(plan).trial, one.trial);
}

// Half keenness of pure wear is 3 w0^2 / (4 t k P s), so the ratio of two steels is that of their
// resistances; both closed forms. Reading between cuts adds up to 0.3 %.
TEST(SimulatedTrials, KnowTheTruthOfPureWear) {
  const AbrasiveMedium medium = only_wearing("filler");

  const SimulatedTrial made = cut(two_steels(medium));

  const materials::AbrasiveAction action{.abrasive_hv = 700, .groove_width_um = 1};
  const double a11 =
      materials::abrasion_resistance(materials::find_microstructure("AISI A11").value(), action);
  const double tough =
      materials::abrasion_resistance(materials::find_microstructure("75Ni8").value(), action);
  const double wear_life = 0.25 * a11 / (4 * std::tan(std::acos(-1.0) / 12) * 6e-7 * 0.02 * 1e6);
  ASSERT_EQ(made.ratios.size(), 1U);
  EXPECT_EQ(made.arms.at(made.ratios[0].a).arm.blade, "AISI A11");
  EXPECT_NEAR(made.ratios[0].ratio, a11 / tough, 0.003 * a11 / tough);
  EXPECT_NEAR(*made.arms.at(0).life_cuts / (3 * wear_life), 1, 0.003);
}

TEST(SimulatedTrials, WriteAFinishWithItsSize) {
  EXPECT_EQ(finish_in_words({.finish_name = "fine", .finish = fine_finish()}),
            "fine, teeth 0.6 µm");
  EXPECT_EQ(cut(two_steels(only_wearing("filler"))).trial.runs[0].arm.edge.finish,
            "even, land 0.5 µm");
}

TEST(SimulatedTrials, ReadAFreshLandOfHalfAMicrometreAs104Gf) {
  TrialPlan plan = two_steels(only_wearing("filler"));
  plan.scatter = {0, 0, 0, 0, 0};

  const SimulatedTrial made = cut(plan);

  for (const trials::Run& run : made.trial.runs) EXPECT_EQ(run.readings.at(0).reading, 104);
  EXPECT_DOUBLE_EQ(made.arms.at(0).start_reading, 104);
}

// From any reading of pure wear: w^2 / w0^2 = 1 + x / tau_w, and tau_w goes with w0^2 / dose. With
// 400 runs the sd of a log is known to 3.5 %; four of these are allowed.
TEST(SimulatedTrials, ScatterTheDosesAndTheStartsAsAsked) {
  TrialPlan plan = two_steels(only_wearing("filler"));
  plan.steels.pop_back();
  plan.runs_each = 400;
  plan.blocks = 1;
  plan.repeats = 1;
  plan.reading = ApexReading::push;
  plan.edge_length_mm = 0.1;
  plan.scatter = {.run_log_sd = 0.3,
                  .block_log_sd = 0,
                  .start_log_sd = 0.1,
                  .spot_log_sd = 0,
                  .reading_log_sd = 0};

  std::vector<double> log_starts;
  std::vector<double> log_doses;
  for (const trials::Run& run : cut(plan).trial.runs) {
    const double start = run.readings.front().reading;
    const double end = run.readings.back().reading;
    log_starts.push_back(std::log(start));
    log_doses.push_back(std::log((end * end - start * start) / run.readings.back().cuts));
  }

  EXPECT_NEAR(std::sqrt(numerics::variance_of(log_starts)), 0.1, 0.014);
  EXPECT_NEAR(std::sqrt(numerics::variance_of(log_doses)), 0.3, 0.042);
}

TEST(SimulatedTrials, CutEveryArmEquallyOftenInEveryBlock) {
  TrialPlan plan = two_steels(known_media()[0]);
  plan.works.push_back(work_in(known_media()[1]));

  const SimulatedTrial made = cut(plan);

  std::map<std::string, std::map<std::string, int>> runs;
  std::vector<std::string> order;
  for (const trials::Run& run : made.trial.runs) {
    ++runs[run.block][run.arm.blade + " " + run.arm.medium.name];
    order.push_back(run.arm.blade + " " + run.arm.medium.name);
  }
  ASSERT_EQ(runs.size(), 2U);
  for (const auto& [block, arms] : runs) {
    EXPECT_EQ(arms.size(), 4U);
    for (const auto& [arm, count] : arms) EXPECT_EQ(count, 2) << block << " " << arm;
  }
  EXPECT_NE(std::vector(order.begin(), order.begin() + 8),
            std::vector(order.begin() + 8, order.end()));
}

TEST(SimulatedTrials, SayInEveryRunThatNoEdgeWasCut) {
  for (const trials::Run& run : cut(two_steels(known_media()[0])).trial.runs) {
    EXPECT_THAT(run.notes, Contains("simulated: no edge was cut"));
  }
}

// Checkpoints that double and add one, a stop at four times the start: common practice, no source.
TEST(SimulatedTrials, StopWhereAnEdgeIsBluntOrAtTheCap) {
  const SimulatedTrial made = cut(two_steels(known_media()[1]));

  const std::set<double> checkpoints{0, 1, 3, 7, 15, 31, 63, 127, 255};
  for (const trials::Run& run : made.trial.runs) {
    std::map<double, double> log_means;
    for (const trials::Reading& reading : run.readings) {
      EXPECT_TRUE(checkpoints.contains(reading.cuts));
      log_means[reading.cuts] += std::log(reading.reading) / 7;
    }
    const double rise = log_means.rbegin()->second - log_means.begin()->second;
    const bool at_the_cap = log_means.rbegin()->first == 255;
    EXPECT_TRUE(at_the_cap || rise >= std::log(4.0));
    log_means.erase(std::prev(log_means.end()));
    EXPECT_LT(log_means.rbegin()->second - log_means.begin()->second, std::log(4.0));
  }
}

// A pause blunts by what it corrodes, once in every round of the mix: 0.5 um at 8 h of 0.0625.
TEST(SimulatedTrials, RepeatMixedWorkUntilTheCutsAreSpent) {
  AbrasiveMedium harmless = only_wearing("harmless");
  harmless.reference_wear_rate_mm3_per_newton_metre = 0;
  TrialPlan plan = two_steels(harmless);
  plan.scatter = {0, 0, 0, 0, 0};
  plan.works = {
      {.name = "with pauses",
       .steps = {{.what = harmless, .cuts = 2},
                 {.what = WetPause{.duration_hour = 8, .land_growth_um_per_hour = 0.0625}}}}};
  plan.longest_cuts = 7;

  const trials::Run run = cut(plan).trial.runs.at(0);

  std::map<double, double> read;
  for (const trials::Reading& reading : run.readings) read[reading.cuts] = reading.reading;
  EXPECT_EQ(read, (std::map<double, double>{{0, 104}, {1, 104}, {3, 208}, {7, 416}}));
}

TEST(SimulatedTrials, DrawCordWhereSlicesAreRead) {
  TrialPlan plan = two_steels(known_media()[0]);
  plan.reading = ApexReading::slice;

  const SimulatedTrial made = cut(plan);

  EXPECT_EQ(made.trial.series.at(0).unit, "mm");
  EXPECT_EQ(made.level, 4);
  EXPECT_NEAR(made.arms.at(0).start_reading, 7.5, 1e-9);
  for (const trials::Run& run : made.trial.runs) {
    const double start = run.readings.front().reading;
    EXPECT_NEAR(start, 7.5, 3);
    EXPECT_NEAR(10 * start, std::round(10 * start), 1e-9);  // tenths of a millimetre
  }
}

TEST(SimulatedTrials, RefuseWhatCannotBeCut) {
  const TrialPlan good = two_steels(known_media()[0]);
  TrialPlan no_steel = good;
  no_steel.steels.clear();
  TrialPlan twice = good;
  twice.steels.push_back(good.steels[0]);
  TrialPlan many_blocks = good;
  many_blocks.blocks = 5;
  TrialPlan only_pause = good;
  only_pause.works[0].steps = {{.what = WetPause{}}};
  TrialPlan steep = good;
  steep.edges[0].apex_angle = {95};

  EXPECT_THAT(refused_sentence(no_steel), HasSubstr("needs a steel"));
  EXPECT_THAT(refused_sentence(twice), HasSubstr("AISI A11 is asked for twice"));
  EXPECT_THAT(refused_sentence(many_blocks), HasSubstr("Accepted: 1 to 4"));
  EXPECT_THAT(refused_sentence(only_pause), HasSubstr("no cut in it"));
  EXPECT_THAT(refused_sentence(steep), HasSubstr("from 1 to 45 degrees"));
  TrialPlan flat = good;
  flat.edges[0].apex_angle = {1e-310};
  EXPECT_THAT(refused_sentence(flat), HasSubstr("from 1 to 45 degrees"));
}

TEST(SimulatedTrials, NameAllThatIsWrongWithAPlanAtOnceAndEachOnce) {
  TrialPlan plan = two_steels(known_media()[0]);
  plan.runs_each = 0;
  plan.repeats = 0;
  plan.scatter.run_log_sd = 9;
  plan.edges[0].apex_angle = {89};
  plan.edge_length_mm = -1;

  std::string words;
  const auto problems = problems_of(plan);
  for (const base::Problem& problem : problems) words += in_words(problem) + "\n";

  EXPECT_EQ(problems.size(), 5U) << words;
  for (const char* said : {"runs of each arm",
                           "readings at a checkpoint",
                           "scatter of runs",
                           "apex angle",
                           "length of the edge"}) {
    EXPECT_THAT(words, HasSubstr(said));
  }
  EXPECT_TRUE(problems_of(two_steels(known_media()[0])).empty());
}

TEST(SimulatedTrials, StopWhenAsked) {
  const auto made = simulated_trial(two_steels(known_media()[0]),
                                    base::one_thread(),
                                    [](const base::Progress&) { return false; });

  ASSERT_FALSE(made);
  EXPECT_EQ(made.error().kind, base::ProblemKind::interrupted);
}

}  // namespace
}  // namespace keenfall::wear
