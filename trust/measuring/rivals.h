// Simpler ways to the same interval, on the same trials: what the model's intervals must not be
// much wider than.
//
// Each gives the 95 % interval of the log ratio of half keenness, A over B, in the medium the cell
// is about; absent where it cannot.
#pragma once

#include "trust/measuring/cell_trial.h"

#include <array>
#include <optional>
#include <string_view>

namespace keenfall::trust {

struct LogBounds {
  double lo = 0;
  double hi = 0;
};

struct Rival {
  std::string_view name;
  std::optional<LogBounds> (*answer)(const CellTrial& trial);
};

// A curve of its own by least squares for every run, then Welch's interval of the means of log half
// keenness.
[[nodiscard]] std::optional<LogBounds> by_curves_of_runs(const CellTrial& trial);

// The same with one shape for all runs: the one that leaves the least squares.
[[nodiscard]] std::optional<LogBounds> by_one_shape(const CellTrial& trial);

// The plain model's posterior (model_spec.h), by the quick engine.
[[nodiscard]] std::optional<LogBounds> by_plain_posterior(const CellTrial& trial);

inline constexpr std::array kRivals{Rival{"curves of runs, Welch", by_curves_of_runs},
                                    Rival{"one shape, Welch", by_one_shape},
                                    Rival{"plain posterior", by_plain_posterior}};

}  // namespace keenfall::trust
