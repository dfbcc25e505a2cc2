#include "blunting/inference/blunting_density.h"

#include "blunting/inference/gradient_check.h"
#include "blunting/simulated_run.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>

namespace keenfall::blunting {
namespace {

// Two blades in two media, two runs a block, two specimens of A, some zeros below the resolution.
trials::Trial a_trial(trials::KeenerWhen keener_when, bool with_zeros) {
  numerics::RandomStream random({21}, 0);
  trials::ReadingKind kind = *trials::find_reading_kind("thread_push");
  kind.keener_when = keener_when;
  kind.zero = trials::ZeroReading::below_resolution;
  kind.resolution = 20;
  trials::Trial trial{.blades = {{.name = "A"}, {.name = "B"}},
                      .series = {{.kind = kind, .unit = "gf"}}};
  int number = 0;
  for (const char* blade : {"A", "B"}) {
    for (const char* medium : {"new", "used"}) {
      for (const char* block : {"1", "2"}) {
        trials::Run run{.name = std::to_string(++number),
                        .arm = {.blade = blade, .medium = {.name = medium}},
                        .block = block};
        if (*blade == 'A') run.specimen = block;
        run.order = number;
        run.readings = simulated_readings({std::log(100), 3 + 0.2 * random.normal(), 0.7},
                                          {.checkpoints = {0, 1, 5, 20, 60}, .repeats = 3},
                                          {.reading_scatter = 0.1},
                                          random);
        if (keener_when == trials::KeenerWhen::higher) {
          for (auto& reading : run.readings) reading.reading = 1e4 / reading.reading;
        }
        if (with_zeros) run.readings[0].reading = 0;
        trial.runs.push_back(run);
      }
    }
  }
  return trial;
}

double worst_gradient_error(const trials::Trial& trial, const ModelSpec& spec) {
  const auto data = prepare(trial, {.kind = "thread_push", .thread = ""}, spec.errors);
  BluntingDensity density(*data, spec);
  return testing::worst_gradient_error(density);
}

TEST(BluntingDensity, HasTheGradientOfItsOwnValueWithEveryPartOfTheModel) {
  EXPECT_LT(worst_gradient_error(a_trial(trials::KeenerWhen::lower, false), default_model()), 1e-6);
}

TEST(BluntingDensity, HasTheGradientOfItsOwnValueForThePlainModel) {
  EXPECT_LT(worst_gradient_error(a_trial(trials::KeenerWhen::lower, false), plain_model()), 1e-6);
}

TEST(BluntingDensity, HasTheGradientOfItsOwnValueWithReadingsBelowTheResolution) {
  EXPECT_LT(worst_gradient_error(a_trial(trials::KeenerWhen::lower, true), default_model()), 1e-6);
  EXPECT_LT(worst_gradient_error(a_trial(trials::KeenerWhen::higher, true), default_model()), 1e-6);
  EXPECT_LT(worst_gradient_error(a_trial(trials::KeenerWhen::lower, true), plain_model()), 1e-6);
}

TEST(BluntingDensity, UsesOnlyThePartsThatTheDataCanTellApart) {
  const auto whole = prepare(
      a_trial(trials::KeenerWhen::lower, false), {"thread_push", ""}, ReadingErrors::robust);
  trials::Trial bare = a_trial(trials::KeenerWhen::lower, false);
  for (trials::Run& run : bare.runs) {
    run.block.clear();
    run.order.reset();
    run.specimen.clear();
    run.arm.medium.name = "new";
    std::erase_if(run.readings, [](const trials::Reading& r) { return r.repeat != 1; });
  }
  const auto rest = prepare(bare, {"thread_push", ""}, ReadingErrors::robust);

  EXPECT_EQ(parts_for(default_model(), *whole),
            (ModelParts{.robust = true,
                        .checkpoint_error = true,
                        .shared_shape = true,
                        .scatter_by_medium = true,
                        .blocks = true,
                        .specimens = true,
                        .start_effect = true,
                        .order_drift = true}));
  EXPECT_EQ(parts_for(default_model(), *rest),
            (ModelParts{.robust = true, .shared_shape = true, .start_effect = true}));
}

}  // namespace
}  // namespace keenfall::blunting
