// Have the chains mixed, and how many independent draws are they worth?
//
// Rank-normalised split R-hat (the larger of bulk and folded), bulk and tail effective sample size:
// Vehtari, Gelman, Simpson, Carpenter & Bürkner 2021, Bayesian Analysis 16(2), 667-718.
// Input: draws of one quantity, chain after chain of one length, at least 4 draws each. A quantity
// that never moves has R-hat 1 and an effective size of all its draws (nothing about it is
// uncertain). Chains that are missing, too short or of several lengths are refused.
#pragma once

#include "numerics/normal_scores.h"

#include <cstddef>
#include <span>
#include <vector>

namespace keenfall::numerics {

struct ChainDiagnostics {
  double r_hat = 1;
  double ess_bulk = 0;
  double ess_tail = 0;

  bool operator==(const ChainDiagnostics&) const = default;
};

struct ChainShape {
  std::size_t chains = 4;
  std::size_t length = 1000;  // draws in a chain
};

// Diagnoses quantities of one shape. What they share is worked out once; threads may share it.
class ChainDiagnoser {
 public:
  explicit ChainDiagnoser(const ChainShape& shape);

  // draws: chain after chain.
  [[nodiscard]] ChainDiagnostics diagnose(std::span<const double> draws) const;

 private:
  ChainShape shape_;
  NormalScores scores_;
};

// One quantity by itself.
[[nodiscard]] ChainDiagnostics diagnose(std::span<const std::vector<double>> chains);

}  // namespace keenfall::numerics
