// For tests: trials whose edges leave the family of curves, in ways that edges are known to.
//
// Two blades, A (half keenness 56 cuts, shape 0.7) and B (40, 0.75), read five times at 0, 1, 3, 7,
// 15, ... cuts until the mean stands at four times the start. Runs scatter by 0.25 and starts by
// 0.06; a reading by 9 %, the spot that is read by 4 %.
#pragma once

#include "trials/trial.h"

#include <cstdint>

namespace keenfall::blunting {

enum class Leaves {
  not_at_all,
  from_seven_cuts_on,  // every edge `times` as blunt: a step
  at_fifteen_cuts,     // and only there
  in_an_s,             // flat, steep and flat again, up to `times` the start
  keener_at_first      // at 1 and 3 cuts by `times` (below 1), at 7 by half of it
};

struct OffTheCurve {
  Leaves leaves = Leaves::not_at_all;
  double times = 1;
  int runs_each = 6;
  double noise_of_a = 1;     // times the errors of A's readings and spots, at B's unchanged
  bool heavy_tails = false;  // Student's t with 4 degrees of freedom instead of normal errors
};

[[nodiscard]] trials::Trial off_the_curve(const OffTheCurve& how, std::uint64_t seed);

}  // namespace keenfall::blunting
