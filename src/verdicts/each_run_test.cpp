#include "verdicts/each_run.h"

#include "blunting/simulated_run.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace keenfall::verdicts {
namespace {

struct OneRun {
  std::string blade;
  double half_keenness = 40;
  std::string block;
  double last = 127;
};

struct Prepared {
  blunting::BluntingData data;
  blunting::BluntingFit fit;  // shapes only: nothing else is looked at
};

Prepared prepared(const std::vector<OneRun>& runs, double reading_scatter) {
  numerics::RandomStream random({1}, 0);
  trials::Trial trial{
      .blades = {{.name = "A"}, {.name = "B"}},
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  for (std::size_t i = 0; i < runs.size(); ++i) {
    trials::Run run{.name = std::to_string(i),
                    .arm = {.blade = runs[i].blade, .medium = {.name = "sisal"}},
                    .block = runs[i].block};
    std::vector<double> checkpoints;
    for (int cuts = 0; cuts <= runs[i].last; cuts = 2 * cuts + 1) checkpoints.push_back(cuts);
    run.readings =
        blunting::simulated_readings({std::log(104), std::log(runs[i].half_keenness), 0.7},
                                     {.checkpoints = checkpoints, .repeats = 3},
                                     {.reading_scatter = reading_scatter},
                                     random);
    trial.runs.push_back(std::move(run));
  }
  Prepared made{
      *blunting::prepare(trial, blunting::fits_of(trial)[0], blunting::ReadingErrors::robust), {}};
  made.fit.arms.resize(made.data.arms.size(), {.shape = {0.7, 0.7}});
  return made;
}

std::optional<RunByRun> compared(const Prepared& made) {
  return compare_run_by_run(
      made.data, curves_of_runs(made.data, made.fit), {.a = 1, .b = 0}, {.comparisons = 1});
}

// Closed form: readings without scatter give each run's half keenness; geometric means 40 and 80.
TEST(RunByRun, TakesEachRunsOwnHalfKeenness) {
  const auto found = compared(prepared(
      {{"A", 30}, {"A", 40}, {"A", 1600.0 / 30}, {"B", 60}, {"B", 80}, {"B", 6400.0 / 60}}, 1e-6));

  ASSERT_TRUE(found);
  EXPECT_NEAR(found->ratio, 2, 1e-3);
  EXPECT_NEAR(found->p, 0.1, 1e-12);  // the two of 20 arrangements that lie furthest apart
  EXPECT_DOUBLE_EQ(found->smallest_possible_p, 0.1);
  EXPECT_FALSE(found->by_blocks);
}

// Six exact checkpoints tell the shape, 0.7, whatever the arms are thought to have.
TEST(RunByRun, KeepsARunsOwnShapeWhereItsReadingsTellIt) {
  Prepared made = prepared({{"A", 30}, {"B", 60}}, 1e-6);
  for (blunting::ArmDraws& arm : made.fit.arms) arm.shape = {1.4, 1.4};

  const auto curves = curves_of_runs(made.data, made.fit);

  EXPECT_NEAR(curves[0].value().shape, 0.7, 1e-3);
  EXPECT_NEAR(std::exp(curves[0]->log_half_keenness), 30, 0.03);
  EXPECT_NEAR(std::exp(curves[1].value().log_half_keenness), 60, 0.06);
}

// Four blocks, B ahead in each: of the 16 signs two are as lopsided.
TEST(RunByRun, RanksDifferencesWithinBlocks) {
  const auto found = compared(prepared({{"A", 30, "1"},
                                        {"A", 40, "2"},
                                        {"A", 50, "3"},
                                        {"A", 60, "4"},
                                        {"B", 40, "1"},
                                        {"B", 52, "2"},
                                        {"B", 70, "3"},
                                        {"B", 90, "4"}},
                                       1e-6));

  ASSERT_TRUE(found && found->by_blocks);
  EXPECT_EQ(found->by_blocks->blocks, 4);
  EXPECT_DOUBLE_EQ(found->by_blocks->p, 2.0 / 16);
}

TEST(RunByRun, RanksUpToTwoHundredBlocks) {
  std::vector<OneRun> runs;
  for (int block = 1; block <= 200; ++block) {
    runs.push_back({"A", 40, std::to_string(block)});
    runs.push_back({"B", 60, std::to_string(block)});
  }

  const auto found = compared(prepared(runs, 0.05));

  ASSERT_TRUE(found && found->by_blocks);
  EXPECT_EQ(found->by_blocks->blocks, 200);
  runs.push_back({"A", 40, "201"});
  runs.push_back({"B", 60, "201"});
  EXPECT_FALSE(compared(prepared(runs, 0.05)).value().by_blocks);
}

TEST(RunByRun, LeavesOutARunThatHardlyBlunted) {
  const auto found =
      compared(prepared({{"A", 30}, {"A", 40}, {"B", 60}, {"B", 80}, {"B", 1e6, "", 15}}, 0.02));

  ASSERT_TRUE(found);
  EXPECT_EQ(found->runs_left_out, 1);
  EXPECT_EQ(found->runs_b, 2);
}

TEST(RunByRun, SaysNothingOfOneRunEach) {
  EXPECT_FALSE(compared(prepared({{"A", 30}, {"B", 60}}, 0.02)));
}

}  // namespace
}  // namespace keenfall::verdicts
