#include "blunting/inference/blunting_data.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::blunting {
namespace {

using trials::Reading;

trials::Run a_run(const std::string& name, std::vector<Reading> readings) {
  return {.name = name,
          .arm = {.blade = "A", .medium = {.name = "sisal"}},
          .readings = std::move(readings)};
}

trials::Trial a_trial(std::vector<trials::Run> runs) {
  return {.blades = {{.name = "A"}},
          .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"},
                     {.kind = *trials::find_reading_kind("card_bite"), .unit = "mm"},
                     {.kind = *trials::find_reading_kind("chip_count"), .unit = "chips"}},
          .runs = std::move(runs)};
}

const SeriesKey kPush{.kind = "thread_push", .thread = ""};

TEST(BluntingData, LeavesOutStruckReadingsAndVoidedRunsAndSaysWhy) {
  trials::Trial trial =
      a_trial({a_run("1", {{.cuts = 0, .reading = 100}, {.cuts = 9, .reading = 200}}),
               a_run("2", {{.cuts = 0, .reading = 100}, {.cuts = 9, .reading = 200}}),
               a_run("3", {{.cuts = 0, .reading = 100}, {.cuts = 9, .reading = 200}})});
  trial.runs[0].readings.push_back({.cuts = 9, .reading = 2000, .struck_reason = "a slip"});
  trial.runs[1].voided_reason = "dropped";
  for (Reading& reading : trial.runs[2].readings) reading.struck_reason = "wrong blade";

  const auto data = prepare(trial, kPush, ReadingErrors::gaussian);

  ASSERT_TRUE(data);
  ASSERT_EQ(data->runs.size(), 1U);
  EXPECT_DOUBLE_EQ(data->runs[0].checkpoints[1].log_bluntness, std::log(200));
  ASSERT_EQ(data->set_aside.size(), 2U);
  EXPECT_EQ(data->set_aside[0].because, "voided: dropped");
  EXPECT_EQ(data->set_aside[1].because, "every reading is struck out");
}

// Two tables that were taken into one trial may be written in two units.
TEST(BluntingData, BringsSeriesOfOneFitIntoTheFirstOnesUnit) {
  trials::Trial trial = a_trial(
      {a_run("1", {{.cuts = 0, .reading = 100}, {.cuts = 9, .reading = 200}}),
       a_run("2",
             {{.series = 3, .cuts = 0, .reading = 1}, {.series = 3, .cuts = 9, .reading = 2}})});
  trial.series.push_back({.kind = *trials::find_reading_kind("thread_push"), .unit = "N"});

  const auto data = prepare(trial, kPush, ReadingErrors::gaussian);

  ASSERT_TRUE(data);
  EXPECT_EQ(data->unit, "gf");
  EXPECT_NEAR(std::exp(data->runs[1].checkpoints[1].log_bluntness), 203.94, 0.01);
}

TEST(BluntingData, TurnsReadingsRoundWhereHigherIsKeener) {
  trials::Trial trial = a_trial({a_run(
      "1", {{.series = 1, .cuts = 0, .reading = 8}, {.series = 1, .cuts = 9, .reading = 4}})});

  const auto data = prepare(trial, {.kind = "card_bite", .thread = ""}, ReadingErrors::robust);

  EXPECT_DOUBLE_EQ(data->runs[0].checkpoints[0].log_bluntness, -std::log(8));
  EXPECT_GT(data->runs[0].checkpoints[1].log_bluntness, data->runs[0].checkpoints[0].log_bluntness);
  EXPECT_DOUBLE_EQ(log_reading_of(*data, -std::log(8)), std::log(8));
}

TEST(BluntingData, KeepsAZeroAsBelowTheResolution) {
  trials::Trial trial = a_trial({a_run(
      "1", {{.cuts = 0, .reading = 0}, {.cuts = 3, .reading = 0.1}, {.cuts = 9, .reading = 0.3}})});
  trial.series[0].kind.resolution = 0.01;

  const auto data = prepare(trial, kPush, ReadingErrors::robust);

  ASSERT_EQ(data->runs[0].checkpoints.size(), 3U);
  EXPECT_TRUE(data->runs[0].checkpoints[0].below_resolution);
  EXPECT_DOUBLE_EQ(data->runs[0].checkpoints[0].log_bluntness, std::log(0.01));
}

TEST(BluntingData, TakesTheResolutionInTheUnitOfTheTable) {
  trials::Trial trial = a_trial({a_run(
      "1", {{.cuts = 0, .reading = 0}, {.cuts = 3, .reading = 100}, {.cuts = 9, .reading = 300}})});
  trial.series[0].kind.unit = "mm";
  trial.series[0].kind.resolution = 0.01;
  trial.series[0].unit = "um";

  const auto data = prepare(trial, kPush, ReadingErrors::robust);

  EXPECT_NEAR(data->runs[0].checkpoints[0].log_bluntness, std::log(10), 1e-9);
  EXPECT_NEAR(*data->kind.resolution, 10, 1e-9);
}

TEST(BluntingData, SetsAsideARunWithOneCheckpointAndFailsWhenNoneIsLeft) {
  const auto nothing =
      prepare(a_trial({a_run("1", {{.cuts = 0, .reading = 100}, {.cuts = 0, .reading = 104}})}),
              kPush,
              ReadingErrors::robust);

  ASSERT_FALSE(nothing);
  EXPECT_EQ(nothing.error().kind, base::ProblemKind::unsuitable_data);
  EXPECT_EQ(
      nothing.error().sentence,
      "No run can be judged: every run is voided, struck out, or has fewer than two checkpoints "
      "of thread push reading.");
}

// Exactly alike readings have no error, and no curve is better than another.
TEST(BluntingData, FailsWhereNoReadingEverChanged) {
  const auto nothing =
      prepare(a_trial({a_run("1", {{.cuts = 0, .reading = 100}, {.cuts = 20, .reading = 100}}),
                       a_run("2", {{.cuts = 0, .reading = 104}, {.cuts = 20, .reading = 104}})}),
              kPush,
              ReadingErrors::robust);

  ASSERT_FALSE(nothing);
  EXPECT_EQ(nothing.error().kind, base::ProblemKind::unsuitable_data);
  EXPECT_EQ(nothing.error().sentence.find("No edge was seen to blunt"), 0U);
}

// By hand: starts of 100 and 400 gf have the mean log of 200; 10, 40, 10 and 40 cuts that of 20.
TEST(BluntingData, IsCentredOnItsMeanStartAndItsMeanCuts) {
  const auto data = prepare(a_trial({a_run("1",
                                           {{.cuts = 0, .reading = 100},
                                            {.cuts = 10, .reading = 200},
                                            {.cuts = 40, .reading = 300}}),
                                     a_run("2",
                                           {{.cuts = 0, .reading = 400},
                                            {.cuts = 10, .reading = 600},
                                            {.cuts = 40, .reading = 900}})}),
                            kPush,
                            ReadingErrors::gaussian);

  ASSERT_TRUE(data);
  EXPECT_NEAR(data->data_centres.log_start, std::log(200), 1e-12);
  EXPECT_NEAR(data->data_centres.log_half_keenness, std::log(20), 1e-12);
}

TEST(BluntingData, NeverPutsTwoKindsOrEvidenceIntoOneFit) {
  trials::Trial trial = a_trial({a_run("1",
                                       {{.series = 0, .cuts = 0, .reading = 100},
                                        {.series = 1, .cuts = 0, .reading = 8},
                                        {.series = 1, .cuts = 9, .reading = 4},
                                        {.series = 2, .cuts = 9, .reading = 0}})});

  EXPECT_EQ(fits_of(trial), (std::vector<SeriesKey>{{"card_bite", ""}, {"thread_push", ""}}));
}

TEST(BluntingData, NumbersBlocksOnlyWhereABlockHoldsSeveralArms) {
  const auto run_of = [](const char* blade, const char* block) {
    trials::Run run = a_run("1", {{.cuts = 0, .reading = 100}, {.cuts = 9, .reading = 200}});
    run.arm.blade = blade;
    run.block = block;
    return run;
  };
  const auto data =
      prepare(a_trial({run_of("A", "1"), run_of("B", "1"), run_of("A", "2"), run_of("B", "3")}),
              kPush,
              ReadingErrors::robust);

  EXPECT_EQ(data->block_count, 1U);
  EXPECT_TRUE(data->runs[0].block);
  EXPECT_FALSE(data->runs[2].block);
}

}  // namespace
}  // namespace keenfall::blunting
