// The table of calibration: are the ranks of the true parameters uniform?
//
// Test: Pearson's chi-squared over 20 bins. Of the parameters of one design the p values are held
// together by Holm's procedure (1979) at 1 %.
#pragma once

#include "trust/measuring/sums.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::trust {

struct RankedParameter {
  std::string name;
  std::vector<double> bins;  // how often each
  double chi_squared = 0;
  double p = 1;
  bool uniform = true;  // by Holm's procedure, among its design's
};

// In the order of their names.
[[nodiscard]] std::vector<RankedParameter> ranked_parameters(const Sums& sums);

struct RanksResult {
  std::string_view design;
  std::string_view engine;
  Sums sums;  // of at least one batch
};

// Each parameter by itself.
[[nodiscard]] std::string ranks_table(std::span<const RanksResult> results);

// A row a result: the least uniform of its parameters, and the ratio of half keenness.
[[nodiscard]] std::string ranks_summary(std::span<const RanksResult> results);

}  // namespace keenfall::trust
