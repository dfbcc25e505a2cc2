// Have the chains mixed, and how many independent draws are they worth?
//
// Rank-normalised split R-hat (the larger of bulk and folded), bulk and tail effective sample size:
// Vehtari, Gelman, Simpson, Carpenter & Bürkner 2021, Bayesian Analysis 16(2), 667-718.
// Input: one vector of draws per chain, equal lengths, at least 4 draws each. A quantity that never
// moves has R-hat 1 and an effective size of all its draws (nothing about it is uncertain).
#pragma once

#include <span>
#include <vector>

namespace keenfall::numerics {

struct ChainDiagnostics {
  double r_hat = 1;
  double ess_bulk = 0;
  double ess_tail = 0;

  bool operator==(const ChainDiagnostics&) const = default;
};

[[nodiscard]] ChainDiagnostics diagnose(std::span<const std::vector<double>> chains);

}  // namespace keenfall::numerics
