// Tables taken without their bad rows, and all of what was left out.
//
// What is left out is a row of a long table, a reading or a line of a table with a line a run, a
// reading, a row or a column of a wide one: never half a row. Where rows contradict one another and
// none can be blamed, or would miss what only a left-out row says, it is a whole run. What is taken
// is what the tables without those parts give, but for remarks and line numbers. What concerns a
// table as a whole refuses everything, as do tables with nothing good in them. docs/table.md tells
// the rules to people.
#pragma once

#include "base/result.h"
#include "exchange/long_table.h"
#include "exchange/table_in_hand.h"
#include "exchange/table_options.h"
#include "exchange/table_part.h"
#include "trials/trial.h"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace keenfall::exchange {

struct LeftOut {
  std::vector<base::Problem> problems;  // as for tables that are refused
  std::vector<std::string> remarks;     // for the trial: where it stood, and why it is left out
  std::vector<TablePart> parts;         // none lies within another

  [[nodiscard]] bool empty() const { return parts.empty(); }
};

// "3 rows and 1 cell".
[[nodiscard]] std::string in_words(const LeftOut& left_out);

struct GoodRows {
  trials::Trial trial;  // without the remarks on what was left out
  LeftOut left_out;
};

// As take_tables (long_table.h).
[[nodiscard]] base::ResultOrProblems<GoodRows> take_good_rows(std::span<const std::string> paths,
                                                              const TableOptions& options,
                                                              const BytesSeen& seen);

// The same of tables in memory.
[[nodiscard]] base::ResultOrProblems<GoodRows> take_good_rows_in_hand(
    std::span<const TableInHand> tables, const TableOptions& options);

// As take_table_text.
[[nodiscard]] base::ResultOrProblems<GoodRows> take_good_rows_of_text(const std::string& text,
                                                                      const std::string& file_name,
                                                                      const TableOptions& options);

}  // namespace keenfall::exchange
