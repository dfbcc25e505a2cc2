// Every problem of tables in hand with its place, and what is left without them. Private to the
// folder.
#pragma once

#include "base/execution.h"
#include "exchange/good_rows.h"
#include "exchange/problem_list.h"
#include "exchange/table_in_hand.h"
#include "exchange/table_seen.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace keenfall::exchange {

struct ProblemsFound {
  std::optional<GoodRows> good;             // nothing: all is refused
  std::vector<ProblemList::Entry> entries;  // as they were found
  std::size_t total = 0;
  std::vector<ProblemList::Entry> noticed;  // of what is good
  std::vector<TableSeen> seen;              // each file and sheet, as the entries count them
};

// As take_good_rows, which says the same in other words.
[[nodiscard]] ProblemsFound problems_found(std::span<const TableInHand> tables,
                                           const TableOptions& options,
                                           std::size_t most_listed,
                                           const base::ProgressReport& progress);

}  // namespace keenfall::exchange
