// The largest crossed sub-table: levels of every factor such that each combination was cut.
//
// Factor by factor a cell has a level; a table of some levels of each factor is crossed when every
// combination of them is there. A level that means "not recorded" can stand only alone. All choices
// of levels are gone through where there are few; else the emptiest level is dropped until the rest
// is complete, which may miss a larger table. Method page: docs/methods/factor-effects.md
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace keenfall::verdicts {

struct Cells {
  std::vector<std::size_t> level_counts;            // of each factor
  std::vector<std::vector<std::size_t>> levels;     // [cell][factor]; no two cells alike
  std::vector<std::optional<std::size_t>> unknown;  // of each factor: the level not recorded
};

struct CrossedTable {
  std::vector<std::vector<std::size_t>> levels;  // [factor]: those kept, rising
  std::vector<std::size_t> cells;                // indices into Cells::levels, rising
};

// Nothing where no two factors have two levels crossed.
[[nodiscard]] std::optional<CrossedTable> largest_crossed_table(const Cells& cells);

}  // namespace keenfall::verdicts
