#include "benchmarks/made_trial.h"

#include "base/require.h"
#include "base/seed.h"
#include "blunting/simulated_run.h"
#include "numerics/random.h"

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::benchmarks {

namespace {

// The truth: half keenness in cuts, 40 in a typical arm; scatters in natural logs. Sizes as in the
// demo's trial.
constexpr double kStartGf = 104;
constexpr double kHalfKeenness = 40;
constexpr double kBladeScatter = 0.4;
constexpr double kMediumScatter = 0.3;
constexpr double kArmScatter = 0.1;
constexpr double kRunScatter = 0.2;
constexpr double kStartScatter = 0.06;
constexpr double kBlockScatter = 0.06;
constexpr double kReadingScatter = 0.09;
constexpr double kShape = 0.7;
constexpr double kLastCheckpoint = 128;

std::vector<double> checkpoints(int count) {
  std::vector<double> cuts{0};
  cuts.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i + 1 < count; ++i) {
    const double part = count == 2 ? 1 : static_cast<double>(i) / (count - 2);
    cuts.push_back(std::pow(kLastCheckpoint, part));
  }
  return cuts;
}

std::vector<double> effects(int count, double scatter, numerics::RandomStream& random) {
  std::vector<double> drawn;
  drawn.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) drawn.push_back(scatter * random.normal());
  return drawn;
}

}  // namespace

trials::Trial made_trial(const TrialSize& size) {
  base::require(size.blades >= 1 && size.media >= 1 && size.runs >= 1 && size.checkpoints >= 2,
                "a made trial has arms, runs and two checkpoints");
  numerics::RandomStream random(base::Seed{1}, 0);
  trials::Trial trial{
      .name = "made",
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  const blunting::ReadingPlan plan{.checkpoints = checkpoints(size.checkpoints),
                                   .repeats = size.repeats};
  const auto of_blade = effects(size.blades, kBladeScatter, random);
  const auto of_medium = effects(size.media, kMediumScatter, random);
  const auto of_arm = effects(size.blades * size.media, kArmScatter, random);
  for (int blade = 0; blade < size.blades; ++blade) {
    trial.blades.push_back({.name = "blade " + std::to_string(blade + 1)});
  }
  int order = 0;
  for (int block = 0; block < size.runs; ++block) {
    const auto of_block = effects(size.media, kBlockScatter, random);
    for (int arm = 0; arm < size.blades * size.media; ++arm) {
      const auto blade = static_cast<std::size_t>(arm / size.media);
      const auto medium = static_cast<std::size_t>(arm % size.media);
      const blunting::LogLogistic curve{
          .log_start = std::log(kStartGf) + kStartScatter * random.normal(),
          .log_half_keenness = std::log(kHalfKeenness) + of_blade[blade] + of_medium[medium] +
                               of_arm[static_cast<std::size_t>(arm)] + of_block[medium] +
                               kRunScatter * random.normal(),
          .shape = kShape};
      trial.runs.push_back({.name = std::to_string(block + 1),
                            .arm = {.blade = trial.blades[blade].name,
                                    .medium = {.name = "medium " + std::to_string(medium + 1)},
                                    .method = {.motion = trials::Motion::slice}},
                            .block = std::to_string(block + 1),
                            .order = ++order,
                            .readings = blunting::simulated_readings(
                                curve, plan, {.reading_scatter = kReadingScatter}, random)});
    }
  }
  return trial;
}

double readings_in(const trials::Trial& trial) {
  double count = 0;
  for (const trials::Run& run : trial.runs) count += static_cast<double>(run.readings.size());
  return count;
}

}  // namespace keenfall::benchmarks
