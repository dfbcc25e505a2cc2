// Does the curve describe the readings? A check for lack of fit that names where it does not.
//
// At every checkpoint of an arm the residuals of its runs, weighed as in the fit, are added up and
// held against what they scatter where the curve is right: less than new readings would, since
// these placed the curve (leverage: Cook & Weisberg 1982), and by as much as the runs differ from
// each other there (pure error: Fisher 1922). A place is named when it is off by more than 5 % of
// the reading and its two-sided p is below 1 % shared out over all places (Bonferroni).
// Method page: docs/methods/curve-check.md
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"

#include <cstddef>
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

[[nodiscard]] CurveCheckResult check_curve(const BluntingData& data, const BluntingFit& fit);

}  // namespace keenfall::blunting
