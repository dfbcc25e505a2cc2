// The table of planned looks: false answers at any look, and intervals that hold at every one.
#pragma once

#include "trust/measuring/looks.h"
#include "trust/telling/bar.h"

#include <span>
#include <string>

namespace keenfall::trust {

struct LooksResult {
  const LooksCell* cell = nullptr;
  TrueRatio ratio = TrueRatio::one;
  Sums sums;  // of at least one batch
};

inline constexpr Bar kRepeatedIntervals{.side = Side::at_least, .limit = 0.94};

[[nodiscard]] std::string looks_table(std::span<const LooksResult> results);

}  // namespace keenfall::trust
