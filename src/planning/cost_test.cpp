#include "planning/cost.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::planning {
namespace {

// One run of one arm, read at the usual checkpoints to 127 cuts.
trials::Plan one_run() {
  return {.cuttings = {{.medium = {.name = "sisal"},
                        .method = {.cut_length_mm = 100},
                        .checkpoint_cuts = {0, 1, 3, 7, 15, 31, 63, 127}}},
          .arms = {{.blade = "A"}},
          .runs_each = 1};
}

// The invented matting bench: three blades in two stocks, six blocks.
trials::Plan matting_bench() {
  trials::Plan plan{.cuttings = {{.medium = {.name = "new matting"},
                                  .method = {.cut_length_mm = 100},
                                  .checkpoint_cuts = {0, 1, 3, 7, 15, 31, 63, 127, 255}},
                                 {.medium = {.name = "uplifted matting"},
                                  .method = {.cut_length_mm = 100},
                                  .checkpoint_cuts = {0, 1, 2, 4, 6, 9, 13, 19, 28}}},
                    .stop = {.level = 4},
                    .runs_each = 6};
  for (std::size_t cutting = 0; cutting < 2; ++cutting) {
    for (const char* blade : {"A", "B", "C"}) {
      plan.arms.push_back({.blade = blade, .cutting = cutting});
    }
  }
  return plan;
}

Assumptions of(std::vector<ExpectedCutting> cuttings, double ratio = 1) {
  return {.cuttings = std::move(cuttings), .true_ratio = ratio};
}

// By hand: 15 min + 127 cuts x 4 s + 8 checkpoints x 7 readings x 15 s = 15 + 8.47 + 14 = 37.47.
TEST(Cost, OfARunThatNothingStopsIsWorkedOutByHand) {
  const PlanCost cost = cost_of(one_run(), of({{}}));

  EXPECT_EQ(cost.runs, 1);
  EXPECT_EQ(cost.cuts, (ExpectedAndMost{127, 127}));
  EXPECT_EQ(cost.readings, (ExpectedAndMost{56, 56}));
  EXPECT_NEAR(cost.minutes_per_run.most, 37.47, 0.005);
  EXPECT_NEAR(cost.hours.expected, 37.47 / 60, 0.0001);
  ASSERT_TRUE(cost.stock_m);
  EXPECT_NEAR(cost.stock_m->most, 12.7, 1e-9);
  EXPECT_EQ(cost.evenings, (ExpectedAndMost{1, 1}));
}

// tau (m - 1)^(1/p) = 10 * 3 = 30 cuts to four times the start, so the run stops when read at 31.
TEST(Cost, StopsWhereTheExpectedEdgeIsReadBeyondTheStopLevel) {
  auto plan = one_run();
  plan.stop.level = 4;

  const PlanCost cost = cost_of(plan, of({{.half_keenness_cuts = 10, .shape = 1}}));

  EXPECT_EQ(cost.cuts, (ExpectedAndMost{31, 127}));
  EXPECT_EQ(cost.readings, (ExpectedAndMost{42, 56}));
}

TEST(Cost, TakesAStopReadingAsALevelOfTheExpectedStart) {
  auto by_level = one_run();
  by_level.stop.level = 4;
  auto by_reading = one_run();
  by_reading.stop.reading = 416;  // four times 104
  const auto assumed = of({{.half_keenness_cuts = 10, .shape = 1}});

  EXPECT_EQ(cost_of(by_reading, assumed).cuts, cost_of(by_level, assumed).cuts);
}

TEST(Cost, ReadsACheckpointThatIsTheStopItself) {
  auto plan = one_run();
  plan.stop.level = 2;

  EXPECT_EQ(cost_of(plan, of({{.half_keenness_cuts = 31}})).cuts.expected, 31);
}

TEST(Cost, NeverGoesBeyondTheLastCheckpoint) {
  auto plan = one_run();
  plan.stop.level = 4;

  const PlanCost cost = cost_of(plan, of({{.half_keenness_cuts = 5000}}));

  EXPECT_EQ(cost.cuts.expected, 127);
}

// 36 runs; at most 18 x (255 + 28) = 5094 cuts and 36 x 9 x 7 = 2268 readings: 18 x 7 ... by hand,
// 36 x 15 min + 5094 x 4 s + 2268 x 15 s = 540 + 339.6 + 567 min = 24.1 hours.
TEST(Cost, OfTheMattingBenchIsWorkedOutByHand) {
  const PlanCost cost =
      cost_of(matting_bench(), of({{.half_keenness_cuts = 48}, {.half_keenness_cuts = 9}}));

  EXPECT_EQ(cost.runs, 36);
  EXPECT_EQ(cost.blocks, 6);
  EXPECT_EQ(cost.cuts.most, 5094);
  EXPECT_EQ(cost.readings.most, 2268);
  EXPECT_NEAR(cost.hours.most, 24.11, 0.005);
  EXPECT_NEAR(cost.stock_m->most, 509.4, 1e-9);
}

// Blocks of 4 hours at most: two evenings of 2.5 hours each block, twelve in all.
TEST(Cost, GivesABlockThatDoesNotFitWholeEveningsOfItsOwn) {
  const PlanCost cost =
      cost_of(matting_bench(), of({{.half_keenness_cuts = 48}, {.half_keenness_cuts = 9}}));

  EXPECT_NEAR(cost.hours_per_block.most, 24.11 / 6, 0.001);
  EXPECT_EQ(cost.evenings.most, 12);
  EXPECT_LT(cost.blocks_per_evening, 1);
}

TEST(Cost, PutsWholeBlocksIntoAnEvening) {
  auto plan = one_run();
  plan.runs_each = 7;  // blocks of 37.47 minutes: four fit into 2.5 hours

  const PlanCost cost = cost_of(plan, of({{}}));

  EXPECT_EQ(cost.evenings.most, 2);
}

TEST(Cost, DoesNotSayStockWhereTheCutsLengthIsNotSaid) {
  auto plan = one_run();
  plan.cuttings[0].method.cut_length_mm.reset();

  EXPECT_FALSE(cost_of(plan, of({{}})).stock_m);
}

TEST(Cost, DoesNotSayStockWhereALengthIsCounted) {
  auto plan = one_run();
  plan.counted = {.one = "metre", .many = "metres", .is_measured = true};

  EXPECT_FALSE(cost_of(plan, of({{}})).stock_m);
}

TEST(Cost, OfNothingIsNothing) {
  const PlanCost cost = cost_of({}, {});

  EXPECT_EQ(cost.runs, 0);
  EXPECT_EQ(cost.hours, ExpectedAndMost{});
  EXPECT_FALSE(cost.stock_m);
}

TEST(Cost, OfAPlanWithoutCheckpointsIsNothing) {
  auto plan = one_run();
  plan.cuttings[0].checkpoint_cuts.clear();

  EXPECT_EQ(cost_of(plan, of({{}})).cuts, ExpectedAndMost{});
}

TEST(Cost, SaysWhatItRestsOn) {
  auto plan = one_run();
  plan.stop.level = 4;

  const PlanCost cost = cost_of(plan, of({{.half_keenness_cuts = 10}}));

  ASSERT_EQ(cost.rests_on.size(), 3U);
  EXPECT_EQ(cost.rests_on[0],
            "A run takes 15 minutes of sharpening, 4 seconds for one cut and 15 seconds for a "
            "reading.");
  EXPECT_EQ(cost.rests_on[1],
            "Edges in sisal are expected to be half as keen after 10 cuts, and a run stops at the "
            "first checkpoint at or beyond 4 times its start reading.");
}

TEST(Cost, IsSaidInOneSentence) {
  auto plan = one_run();
  plan.stop.level = 4;
  const auto cost = cost_of(plan, of({{.half_keenness_cuts = 10, .shape = 1}}));

  EXPECT_EQ(in_words(cost, plan.counted),
            "1 run in 1 block: 31 cuts (at most 127), 3.1 m (at most 13) of stock, 42 readings "
            "(at most 56); 28 minutes (at most 37) at the bench, 1 evening.");
}

// Neither stops anything: such a plan has a flaw, and its cost is told all the same.
TEST(Cost, OfAPlanThatNothingStopsIsThatOfItsLastCheckpoint) {
  auto by_reading = one_run();
  by_reading.stop.reading = -5;
  auto by_level = one_run();
  by_level.stop.level = 1;
  for (const trials::Plan& plan : {by_reading, by_level}) {
    const PlanCost cost = cost_of(plan, of({{.half_keenness_cuts = 10}}));

    EXPECT_EQ(cost.cuts, (ExpectedAndMost{127, 127}));
    EXPECT_EQ(cost.rests_on[1],
              "Every run goes to its last checkpoint, since nothing else stops it.");
  }
}

TEST(Cost, RestsOnWhatIsAssumedOnly) {
  auto plan = one_run();
  plan.stop.level = 4;
  plan.cuttings.resize(2, plan.cuttings[0]);
  plan.cuttings[1].medium.name = "manila";

  const PlanCost cost = cost_of(plan, of({{.half_keenness_cuts = 10}}));

  ASSERT_EQ(cost.rests_on.size(), 3U);
  EXPECT_TRUE(cost.rests_on[1].starts_with("Edges in sisal are expected"));
}

TEST(Cost, OfWorkThatTakesNoTimeIsNoEvening) {
  const PlanCost cost =
      cost_of(one_run(),
              of({{}}),
              {.sharpening_minutes_per_run = 0, .seconds_per_cut = 0, .seconds_per_reading = 0});

  EXPECT_EQ(cost.evenings, ExpectedAndMost{});
  EXPECT_EQ(cost.hours, ExpectedAndMost{});
}

TEST(Cost, SaysBelowAnHourInMinutes) {
  EXPECT_EQ(hours_in_words({0.57, 0.57}), "34 minutes");
  EXPECT_EQ(hours_in_words({0.46, 0.62}), "28 minutes (at most 37)");
  EXPECT_EQ(hours_in_words({0.57, 1.4}), "34 minutes (at most 1.4 hours)");
  EXPECT_EQ(hours_in_words({1, 24.11}), "1 hour (at most 24)");
  EXPECT_EQ(hours_in_words({0.999, 1}), "1 hour");
  EXPECT_EQ(hours_in_words({1.0 / 60, 1}), "1 minute (at most 1 hour)");
  EXPECT_EQ(hours_in_words({0, 0}), "0 minutes");
}

TEST(Cost, SaysARangeWithoutAUnitToo) {
  EXPECT_EQ(in_words(ExpectedAndMost{5, 9}, ""), "5 (at most 9)");
  EXPECT_EQ(in_words(ExpectedAndMost{5, 5}, ""), "5");
  EXPECT_EQ(in_words(ExpectedAndMost{3214, 5094}, "m"), "3210 m (at most 5090)");
}

TEST(BenchTimes, OfPracticeAreInRange) { EXPECT_TRUE(problems_of(BenchTimes{}).empty()); }

TEST(BenchTimes, OutOfRangeAreRefused) {
  const auto problems = problems_of(BenchTimes{.seconds_per_cut = -1, .hours_per_evening = 0});

  ASSERT_EQ(problems.size(), 2U);
  EXPECT_EQ(problems[0].sentence, "The seconds one cut takes cannot be -1.");
  EXPECT_EQ(problems[1].place.column, "hours_per_evening");
}

// 1 ft = 0.3048 m exactly (NIST SP 811 B.8): 30.48 m are 100 ft.
TEST(Cost, TellsStockInFeetBesideInches) {
  const ExpectedAndMost stock_m{.expected = 30.48, .most = 60.96};

  EXPECT_EQ(stock_in_words(stock_m, {}), "30 m (at most 61)");
  EXPECT_EQ(stock_in_words(stock_m, {.length = "in"}), "100 ft (at most 200)");
}

TEST(BenchTimes, SayBetweenWhichNumbersTheyLie) {
  const auto problems = problems_of(BenchTimes{.sharpening_minutes_per_run = 1441,
                                               .seconds_per_cut = -1,
                                               .seconds_per_reading = 3601,
                                               .hours_per_evening = 25});

  ASSERT_EQ(problems.size(), 4U);
  EXPECT_EQ(problems[0].sentence, "The minutes a sharpening takes cannot be 1441.");
  EXPECT_EQ(problems[0].accepted, "0 to 1440");
  EXPECT_EQ(problems[1].accepted, "0 to 3600");
  EXPECT_EQ(problems[2].sentence, "The seconds a reading takes cannot be 3601.");
  EXPECT_EQ(problems[3].sentence, "The hours of an evening cannot be 25.");
  EXPECT_EQ(problems[3].accepted, "above 0, up to 24");
}

TEST(BenchTimes, MayBeNoneButThoseOfAnEvening) {
  EXPECT_TRUE(problems_of(BenchTimes{.sharpening_minutes_per_run = 0,
                                     .seconds_per_cut = 0,
                                     .seconds_per_reading = 0,
                                     .hours_per_evening = 24})
                  .empty());
}

}  // namespace
}  // namespace keenfall::planning
