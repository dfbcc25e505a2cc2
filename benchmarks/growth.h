// How a cost grows when the readings (or the edges) are doubled: twofold where the work is linear
// in them, fourfold where it is quadratic.
#pragma once

#include <string>
#include <vector>

namespace keenfall::benchmarks {

struct Grown {
  std::string size;  // "250,000 readings"
  double cpu_s = 0;
  double peak_memory_mb = 0;
};

// Each step has twice the readings of the one before: a table with the growth at each, and the bar
// that none reaches 2.83 (the square root of 2 times 4: half-way in logs).
[[nodiscard]] std::string growth_text(const std::string& head, const std::vector<Grown>& steps);

}  // namespace keenfall::benchmarks
