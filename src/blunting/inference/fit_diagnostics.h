// Is a fit fit for use? The bars that the draws of every watched quantity must pass.
//
// Bars of Vehtari et al. 2021: R-hat at most 1.01, effective sizes at least 400 (100 per chain),
// and divergent transitions under 0.1 %. Single runs are held to the same while there are not
// hundreds of them; of thousands of chance-ridden R-hats the largest passes 1.01 though every chain
// is right, so then to 1.05 (docs/decisions/0007-many-runs.md). A fit below the bars is a result
// with its reasons, in plain words.
#pragma once

#include "base/execution.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::blunting {

using Draws = std::vector<double>;  // chain after chain

struct FitDiagnostics {
  bool usable = false;
  std::vector<std::string> reasons;  // why it is not usable
  double r_hat_max = 1;  // of what verdicts rest on; of single runs too where they share its bar
  double ess_bulk_min = 0;
  double ess_tail_min = 0;
  int divergences = 0;
};

struct Watched {
  std::vector<const Draws*> main;  // arms, scatters, covariates: what verdicts rest on
  std::vector<const Draws*> runs;  // of single runs
};

// watched: at least one main quantity, all of one length, which `chains` divides.
[[nodiscard]] FitDiagnostics diagnostics_of(const Watched& watched,
                                            std::size_t chains,
                                            int divergences,
                                            const base::Executor& execute);

}  // namespace keenfall::blunting
