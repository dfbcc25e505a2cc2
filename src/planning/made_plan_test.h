// For tests: plans of two blades and more, with only what matters to them said.
#pragma once

#include "planning/assumptions.h"
#include "trials/kit.h"
#include "trials/plan.h"

#include <string>

namespace keenfall::planning::testing {

// Blades A, B, C ... with one edge in one medium, read to 127 cuts and stopped at 4 times the
// start.
inline trials::Plan made_plan(int arms = 2, int runs_each = 4) {
  trials::Plan plan{.cuttings = {{.medium = {.name = "sisal"},
                                  .method = {.cut_length_mm = 100},
                                  .checkpoint_cuts = {0, 1, 3, 7, 15, 31, 63, 127}}},
                    .reading = {.repeats = 3},
                    .stop = {.level = 4},
                    .runs_each = runs_each};
  for (int a = 0; a < arms; ++a) {
    plan.arms.push_back(
        {.blade = std::string(1, static_cast<char>('A' + a)), .edge = {.finish = "9 um diamond"}});
  }
  return plan;
}

inline Assumptions assumed(double half_keenness_cuts = 30, double run_log_sd = 0.2) {
  return {.cuttings = {{.half_keenness_cuts = half_keenness_cuts, .run_log_sd = run_log_sd}}};
}

inline trials::Kit made_kit(int blades = 2) {
  trials::Kit kit;
  for (int b = 0; b < blades; ++b) {
    kit.blades.push_back({.name = std::string(1, static_cast<char>('A' + b))});
  }
  return kit;
}

}  // namespace keenfall::planning::testing
