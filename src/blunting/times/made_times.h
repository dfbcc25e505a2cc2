// For tests: lives of two blades from known log-logistic times, tried every so many cuts.
#pragma once

#include "numerics/random.h"
#include "trials/trial.h"

#include <cmath>
#include <string>

namespace keenfall::blunting::testing {

struct MadeTimes {
  int runs_each = 4;
  double log_median_a = 3;
  double log_median_b = 3.7;
  double scale = 0.2;
  double try_every_cuts = 5;
  int blocks = 0;
  bool two_specimens = false;
  double given_up_after_cuts = 60;
};

inline trials::Trial made_times(const MadeTimes& made, std::uint64_t seed) {
  numerics::RandomStream random({seed}, 0);
  trials::Trial trial{.blades = {{.name = "A"}, {.name = "B"}}};
  for (int r = 0; r < made.runs_each; ++r) {
    for (const char* blade : {"A", "B"}) {
      const double u = random.uniform();
      const double median = *blade == 'A' ? made.log_median_a : made.log_median_b;
      const double cuts = std::exp(median + made.scale * std::log(u / (1 - u)));
      const double tries = std::floor(cuts / made.try_every_cuts);
      trials::EdgeLife life{.lasted_cuts = tries * made.try_every_cuts};
      if (life.lasted_cuts < made.given_up_after_cuts) {
        life.failed_by_cuts = life.lasted_cuts + made.try_every_cuts;
      } else {
        life.lasted_cuts = made.given_up_after_cuts;
      }
      trials::Run run{.name = std::to_string(r + 1),
                      .arm = {.blade = blade, .medium = {.name = "matting"}},
                      .edge_lives = {life}};
      if (made.blocks > 0) run.block = std::to_string(r % made.blocks);
      if (made.two_specimens) run.specimen = std::to_string(r % 2);
      trial.runs.push_back(run);
    }
  }
  return trial;
}

}  // namespace keenfall::blunting::testing
