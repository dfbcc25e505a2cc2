// Simulation-based calibration: where the true parameters stand among the draws of their posterior.
//
// Parameters are drawn from their priors and readings from the parameters; over many such trials
// the rank of every parameter among its draws is uniform exactly if posterior and model agree
// (Cook, Gelman & Rubin 2006; Talts et al. 2018, arXiv:1804.06788). Prior centres are fixed.
#pragma once

#include "trust/measuring/cell_sums.h"
#include "trust/measuring/prior_trial.h"
#include "trust/measuring/sums.h"

#include <cstddef>
#include <span>
#include <string>

namespace keenfall::trust {

inline constexpr std::size_t kRankBins = 20;  // of equal size
// Of a full fit, so far apart that they are as good as independent: ranks 0 to 99.
inline constexpr std::size_t kRankedDraws = 99;

[[nodiscard]] std::span<const CalibrationDesign> calibration_designs();

// Every number of a design, as text.
[[nodiscard]] std::string definition_of(const CalibrationDesign& design);

// "run scatter of medium 1#07": how often its rank fell into that bin. Of the arms' and media's
// parameters all, of blocks, specimens and runs the first; of the ratios of half keenness, A over B
// in the first medium. Fits that are not usable are ranked all the same, and counted.
[[nodiscard]] Sums full_ranks(const CalibrationDesign& design, const Batch& batch);

// Of the quick engine: what it draws, which is the arms' parameters and so the ratio.
[[nodiscard]] Sums quick_ranks(const CalibrationDesign& design, const Batch& batch);

}  // namespace keenfall::trust
