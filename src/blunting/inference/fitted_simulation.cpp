#include "blunting/inference/fitted_simulation.h"

#include "blunting/simulated_run.h"
#include "numerics/summaries.h"

#include <cmath>
#include <numeric>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::blunting {

trials::Trial simulated(const Truth& truth, std::uint64_t seed) {
  numerics::RandomStream random({seed}, 0);
  trials::Trial trial{
      .blades = {{.name = "A"}, {.name = "B"}},
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  double count = 0;
  std::vector<int> order(2 * static_cast<std::size_t>(truth.runs_each));
  std::iota(order.begin(), order.end(), 1);
  for (std::size_t i = order.size(); truth.order_drift != 0 && i > 1; --i) {
    const auto other = static_cast<std::size_t>(random.uniform() * static_cast<double>(i));
    std::swap(order[i - 1], order[other]);
  }
  std::vector<double> blocks;
  for (int b = 0; b < truth.blocks; ++b) blocks.push_back(truth.block_scatter * random.normal());
  for (const bool is_a : {true, false}) {
    std::vector<double> pieces;
    for (int i = 0; i < truth.specimens_each; ++i) {
      pieces.push_back(truth.specimen_scatter * random.normal());
    }
    for (int i = 0; i < truth.runs_each; ++i) {
      const double half_error = truth.run_scatter * random.normal();
      const double start_error = truth.start_scatter * random.normal();
      const int place = order[trial.runs.size()];
      const int piece = pieces.empty() ? 0 : i % truth.specimens_each;
      const double log_half =
          std::log(40 * (is_a ? truth.ratio : 1)) + half_error + truth.start_effect * start_error +
          truth.order_drift * ((place - 1.0) / (2.0 * truth.runs_each - 1) - 0.5) +
          (pieces.empty() ? 0 : pieces[static_cast<std::size_t>(piece)]) +
          (blocks.empty() ? 0 : blocks[static_cast<std::size_t>(i) % blocks.size()]);
      trials::Run run{.name = std::to_string(i),
                      .arm = {.blade = is_a ? "A" : "B", .medium = {.name = "sisal"}}};
      if (truth.order_drift != 0) run.order = place;
      if (!pieces.empty()) run.specimen = std::to_string(piece + 1);
      if (!blocks.empty()) run.block = std::to_string(i % truth.blocks + 1);
      run.readings = simulated_readings(
          {std::log(104) + start_error, log_half, is_a ? 0.7 : 0.75},
          {.checkpoints = {0, 1, 3, 7, 15, 31, 63, 127}, .repeats = 3, .stop_level = 4},
          {.reading_scatter = 0.1},
          random);
      for (trials::Reading& reading : run.readings) {
        if (truth.slip_every > 0 && std::fmod(++count, truth.slip_every) == 0)
          reading.reading *= 10;
      }
      trial.runs.push_back(std::move(run));
    }
  }
  return trial;
}

Fitted fitted(const trials::Trial& trial, const ModelSpec& spec, const base::Executor& execute) {
  auto data = prepare(trial, {.kind = "thread_push", .thread = ""}, spec.errors);
  auto fit = fit_blunting(*data, spec, {}, {3}, execute, base::unwatched());
  return {std::move(*data), std::move(*fit)};
}

numerics::Interval log_ratio_of(const BluntingFit& fit) {
  Draws ratio = fit.arms[0].log_half_keenness;
  for (std::size_t d = 0; d < ratio.size(); ++d) ratio[d] -= fit.arms[1].log_half_keenness[d];
  return numerics::interval_of(std::move(ratio));
}

}  // namespace keenfall::blunting
