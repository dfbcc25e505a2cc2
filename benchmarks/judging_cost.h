// What ways of judging one trial cost, side by side, as ratios to the peer.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace keenfall::benchmarks {

struct JudgingCost {
  std::string name;
  double cpu_s = 0;
  std::optional<double> peak_memory_mb;  // of its own process; absent: it had none
};

// The peer absent: without the column of ratios.
[[nodiscard]] std::string costs_text(const std::vector<JudgingCost>& ours,
                                     const std::optional<JudgingCost>& peer);

}  // namespace keenfall::benchmarks
