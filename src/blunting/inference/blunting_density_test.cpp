#include "blunting/inference/blunting_density.h"

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

// The largest relative difference between the gradient and central differences, at some points.
double worst_gradient_error(const trials::Trial& trial, const ModelSpec& spec) {
  const auto data = prepare(trial, {.kind = "thread_push", .thread = ""}, spec.errors);
  BluntingDensity density(*data, spec);
  double worst = 0;
  for (std::uint64_t chain = 0; chain < 3; ++chain) {
    std::vector<double> q = density.start_for({5}, chain);
    std::vector<double> gradient(q.size());
    std::vector<double> unused(q.size());
    (void)density(q, gradient);
    for (std::size_t i = 0; i < q.size(); ++i) {
      const double h = 1e-5;
      const double here = q[i];
      q[i] = here + h;
      const double above = density(q, unused);
      q[i] = here - h;
      const double below = density(q, unused);
      q[i] = here;
      const double slope = (above - below) / (2 * h);
      worst = std::max(worst, std::abs(slope - gradient[i]) / (1 + std::abs(slope)));
    }
  }
  return worst;
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
