// The cells of the table of truth: of each, what its simulated trials are like. One factor differs
// from the main cells at a time.
#pragma once

#include "blunting/simulated_pair.h"

#include <span>
#include <string>
#include <string_view>
#include <variant>

namespace keenfall::trust {

// Two steels cut by the apex simulator, which knows nothing of the blunting model.
struct ApexPair {
  std::string_view medium;
  std::string_view steel;
  std::string_view other;  // where the edges are to differ; else a second blade of `steel`
  int runs_each = 4;
  int truth_edges = 2000;  // of each steel, for the truth: their median's error is some 0.3 %
};

struct Cell {
  std::string_view name;  // "runs-4": what `./keen trust` takes
  std::string_view about;
  bool main = false;
  bool misspecified = false;          // made otherwise than the default model assumes
  std::string_view medium = "sisal";  // in which the blades are compared
  // Of blades that last equally long where they are compared.
  std::variant<blunting::Truth, ApexPair> made;
};

[[nodiscard]] std::span<const Cell> cells();

// How the blades of a cell's trials truly stand to each other.
enum class TrueRatio { one, margin };

// The worth-it margin that is asked about, and the true ratio at the margin; of edges by the apex
// simulator the margin is their true ratio instead (cell_trial.h).
inline constexpr double kMargin = 1.5;

// Every number that makes the cell, as text: results kept from another definition do not count.
[[nodiscard]] std::string definition_of(const Cell& cell);

}  // namespace keenfall::trust
