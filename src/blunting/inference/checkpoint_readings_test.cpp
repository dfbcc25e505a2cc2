#include "blunting/inference/checkpoint_readings.h"

#include <gtest/gtest.h>

#include <stdexcept>

namespace keenfall::blunting {
namespace {

using trials::Reading;

trials::Trial one_run(std::vector<Reading> readings) {
  return {.blades = {{.name = "A"}},
          .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"},
                     {.kind = *trials::find_reading_kind("card_bite"), .unit = "mm"},
                     {.kind = *trials::find_reading_kind("glint"), .unit = "%"}},
          .runs = {{.name = "1",
                    .arm = {.blade = "A", .medium = {.name = "sisal"}},
                    .readings = std::move(readings)}}};
}

std::vector<CheckpointReading> of(const trials::Trial& trial, const std::string& kind) {
  return checkpoint_readings(trial, trial.runs[0], {.kind = kind});
}

// Closed form: (80 x 100 x 125)^(1/3) = 100.
TEST(CheckpointReadings, AreGeometricMeansByRisingCuts) {
  const auto read = of(one_run({{.cuts = 9, .reading = 200},
                                {.cuts = 0, .reading = 80},
                                {.cuts = 0, .reading = 125},
                                {.cuts = 0, .reading = 100}}),
                       "thread_push");

  ASSERT_EQ(read.size(), 2U);
  EXPECT_EQ(read[0].cuts, 0);
  EXPECT_NEAR(read[0].reading, 100, 1e-12);
  EXPECT_EQ(read[0].readings, 3);
  EXPECT_EQ(read[1].cuts, 9);
  EXPECT_NEAR(read[1].reading, 200, 1e-12);
}

TEST(CheckpointReadings, LeaveOutWhatIsStruckAndCountWhatIsDoubtful) {
  const auto read = of(one_run({{.cuts = 0, .reading = 50},
                                {.cuts = 0, .reading = 200, .doubtful_reason = "shook"},
                                {.cuts = 0, .reading = 900, .struck_reason = "slipped"},
                                {.cuts = 9, .reading = 300, .struck_reason = "slipped"}}),
                       "thread_push");

  ASSERT_EQ(read.size(), 1U);
  EXPECT_NEAR(read[0].reading, 100, 1e-12);
  EXPECT_EQ(read[0].readings, 2);
}

TEST(CheckpointReadings, StayReadingsWhereHigherIsKeener) {
  const auto read = of(one_run({{.series = 1, .cuts = 0, .reading = 4},
                                {.series = 1, .cuts = 0, .reading = 9},
                                {.cuts = 0, .reading = 100}}),
                       "card_bite");

  ASSERT_EQ(read.size(), 1U);
  EXPECT_NEAR(read[0].reading, 6, 1e-12);
}

TEST(CheckpointReadings, ShowAZeroAsTheResolutionInTheUnitOfTheTable) {
  trials::Trial trial = one_run({{.cuts = 0, .reading = 0}, {.cuts = 9, .reading = 3}});
  trial.series[0].kind.resolution = 0.5;
  trial.series[0].unit = "N";

  const auto read = of(trial, "thread_push");

  ASSERT_EQ(read.size(), 2U);
  EXPECT_TRUE(read[0].below_resolution);
  EXPECT_NEAR(read[0].reading, 0.5 * 0.00980665, 1e-12);  // 1 gf (SI, standard gravity)
  EXPECT_FALSE(read[1].below_resolution);
}

TEST(CheckpointReadings, AreNoneOfARunWithoutAnyAndRefusedForEvidence) {
  EXPECT_TRUE(of(one_run({}), "thread_push").empty());
  EXPECT_THROW((void)of(one_run({{.series = 2, .cuts = 0, .reading = 0}}), "glint"),
               std::logic_error);
}

}  // namespace
}  // namespace keenfall::blunting
