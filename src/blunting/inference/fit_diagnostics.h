// Is a fit fit for use? The bars that the draws of every watched quantity must pass.
//
// Bars of Vehtari et al. 2021: R-hat at most 1.01, effective sizes at least 400 (100 per chain),
// and divergent transitions under 0.1 %. A fit below them is a result with its reasons, in plain
// words.
#pragma once

#include "base/execution.h"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace keenfall::blunting {

using Draws = std::vector<double>;  // chain after chain

struct FitDiagnostics {
  bool usable = false;
  std::vector<std::string> reasons;  // why it is not usable
  double r_hat_max = 1;
  double ess_bulk_min = 0;
  double ess_tail_min = 0;
  int divergences = 0;
};

// watched: at least one quantity, all of one length, which `chains` divides.
[[nodiscard]] FitDiagnostics diagnostics_of(std::span<const Draws* const> watched,
                                            std::size_t chains,
                                            int divergences,
                                            const base::Executor& execute);

}  // namespace keenfall::blunting
