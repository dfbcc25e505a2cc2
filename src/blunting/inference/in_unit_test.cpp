#include "blunting/inference/in_unit.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::blunting {
namespace {

trials::Trial a_trial(const char* kind, const char* unit, double one) {
  return {.blades = {{.name = "A"}},
          .series = {{.kind = *trials::find_reading_kind(kind), .unit = unit}},
          .runs = {{.name = "1",
                    .arm = {.blade = "A", .medium = {.name = "sisal"}},
                    .readings = {{.cuts = 0, .reading = 8 * one},
                                 {.cuts = 9, .reading = 5 * one},
                                 {.cuts = 20, .reading = 4 * one}}}}};
}

BluntingData prepared(const char* kind, const char* unit, double one) {
  return *prepare(a_trial(kind, unit, one), {.kind = kind, .thread = ""}, ReadingErrors::gaussian);
}

void expect_as_written(const BluntingData& told, const BluntingData& written) {
  EXPECT_EQ(told.unit, written.unit);
  ASSERT_EQ(told.runs.size(), written.runs.size());
  for (std::size_t k = 0; k < told.runs[0].checkpoints.size(); ++k) {
    EXPECT_NEAR(told.runs[0].checkpoints[k].log_bluntness,
                written.runs[0].checkpoints[k].log_bluntness,
                1e-12);
  }
  EXPECT_NEAR(told.data_centres.log_start, written.data_centres.log_start, 1e-12);
}

// 1 in = 25.4 mm, 1 gf = 9.80665e-3 N, exactly (NIST SP 811 B.8).
TEST(InUnit, DataAreAsIfTheyHadBeenWrittenSo) {
  expect_as_written(in_unit(prepared("thread_push", "gf", 1), "N"),
                    prepared("thread_push", "N", 9.80665e-3));
  expect_as_written(in_unit(prepared("card_bite", "mm", 25.4), "in"),
                    prepared("card_bite", "in", 1));
}

TEST(InUnit, DataRememberTheUnitTheyWereRecordedIn) {
  const BluntingData told = in_unit(prepared("thread_push", "gf", 1), "N");

  EXPECT_NEAR(told.recorded_per_told, 1 / 9.80665e-3, 1e-9);
  EXPECT_NEAR(in_unit(told, "gf").recorded_per_told, 1, 1e-12);
}

TEST(InUnit, StartsMoveAndNothingElseOfAFit) {
  const BluntingData data = prepared("card_bite", "mm", 25.4);
  BluntingFit fit;
  fit.arms = {{.log_start = {0.5, 0.7}, .log_half_keenness = {3, 3.1}, .shape = {0.7, 0.8}}};
  fit.runs = {{.log_start_median = 0.6, .log_start = {0.6}, .log_half_keenness = {2.9}}};

  const BluntingFit told = in_unit(fit, data, "in");

  // A higher bite is keener, so that bluntness is its reciprocal.
  EXPECT_NEAR(told.arms[0].log_start[1], 0.7 + std::log(25.4), 1e-12);
  EXPECT_NEAR(told.runs[0].log_start[0], 0.6 + std::log(25.4), 1e-12);
  EXPECT_NEAR(told.runs[0].log_start_median, 0.6 + std::log(25.4), 1e-12);
  EXPECT_EQ(told.arms[0].log_half_keenness, fit.arms[0].log_half_keenness);
  EXPECT_EQ(told.arms[0].shape, fit.arms[0].shape);
}

TEST(InUnit, TheSameUnitChangesNothing) {
  const BluntingData data = prepared("thread_push", "gf", 1);

  EXPECT_EQ(in_unit(data, "gf").runs[0].checkpoints[0].log_bluntness,
            data.runs[0].checkpoints[0].log_bluntness);
}

}  // namespace
}  // namespace keenfall::blunting
