#include "blunting/inference/anchors.h"

#include "blunting/simulated_run.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::blunting {
namespace {

// Two runs each of A, half as keen after 20 cuts, and of B, after a million; read up to 60 cuts.
BluntingData blunted_and_level() {
  numerics::RandomStream random({5}, 0);
  trials::Trial trial{
      .blades = {{.name = "A"}, {.name = "B"}},
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  for (const char* blade : {"A", "B"}) {
    for (const char* name : {"1", "2"}) {
      trials::Run run{.name = name, .arm = {.blade = blade, .medium = {.name = "sisal"}}};
      run.readings =
          simulated_readings({std::log(100), std::log(*blade == 'A' ? 20 : 1'000'000), 0.7},
                             {.checkpoints = {0, 1, 5, 20, 60}, .repeats = 3},
                             {.reading_scatter = 0.1},
                             random);
      trial.runs.push_back(run);
    }
  }
  return *prepare(trial, {.kind = "thread_push", .thread = ""}, ReadingErrors::robust);
}

TEST(Anchors, HoldTheHalfKeennessOnlyOfRunsThatCanBeToldFromALevelLine) {
  const BluntingData data = blunted_and_level();
  const ModelSpec spec = default_model();

  const Anchors anchors = anchors_for(data, spec, layout_of(parts_for(spec, data), data));

  for (const std::size_t blunted : {0U, 1U}) {
    EXPECT_GT(anchors.runs[blunted].half.information, 1) << blunted;
    EXPECT_NEAR(anchors.runs[blunted].half.level, std::log(20), 0.7) << blunted;
  }
  for (const std::size_t level : {2U, 3U}) {
    EXPECT_EQ(anchors.runs[level].half.information, 0) << level;
    EXPECT_EQ(anchors.runs[level].half_by_start, 0) << level;
  }
}

// By hand: log half keenness 0.2 either side of each arm's mean, however far the arms lie apart, is
// a pooled variance of 4 x 0.2^2 / 2.
TEST(Anchors, SuggestTheScatterOfRunsAboutTheirOwnArm) {
  numerics::RandomStream random({5}, 0);
  trials::Trial trial{
      .blades = {{.name = "A"}, {.name = "B"}},
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  for (const char* blade : {"A", "B"}) {
    for (const double off : {-0.2, 0.2}) {
      trials::Run run{.name = "1", .arm = {.blade = blade, .medium = {.name = "sisal"}}};
      run.readings =
          simulated_readings({std::log(100), std::log(*blade == 'A' ? 20 : 80) + off, 0.7},
                             {.checkpoints = {0, 5, 20, 60, 200}},
                             {.reading_scatter = 0.001},
                             random);
      trial.runs.push_back(run);
    }
  }
  const BluntingData data =
      *prepare(trial, {.kind = "thread_push", .thread = ""}, ReadingErrors::robust);
  const ModelSpec spec = default_model();

  const Anchors anchors = anchors_for(data, spec, layout_of(parts_for(spec, data), data));

  EXPECT_NEAR(anchors.scatters.run, std::sqrt(0.08), 0.01);
}

}  // namespace
}  // namespace keenfall::blunting
