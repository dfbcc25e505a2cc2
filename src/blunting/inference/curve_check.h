// Does the curve describe the readings? A posterior predictive check that names where it does not.
//
// At every checkpoint of an arm the mean standardised residual over its runs is compared, draw by
// draw, with that of readings made anew from the model (Gelman, Meng & Stern 1996, realised
// discrepancies). A place is named when it is off by more than 5 % of the reading and its two-sided
// p is below 1 % shared out over all places (Bonferroni).
#pragma once

#include "base/seed.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"

#include <string>
#include <vector>

namespace keenfall::blunting {

struct CurveMisfit {
  std::size_t arm = 0;
  double cuts = 0;
  double log_offset = 0;  // mean of log reading minus fitted, > 0: blunter than the curve
  double p = 1;
};

struct CurveCheckResult {
  double smallest_p = 1;  // over all places, already multiplied by their number, at most 1
  std::vector<CurveMisfit> misfits;
};

[[nodiscard]] CurveCheckResult check_curve(const BluntingData& data,
                                           const BluntingFit& fit,
                                           base::Seed seed);

}  // namespace keenfall::blunting
