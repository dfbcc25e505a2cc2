// The long table: one row a reading, taken into a Trial and written from one.
//
// In: CSV text (comma, semicolon or tab; decimal point or comma; UTF-8) with at least the columns
// blade, medium, run, cuts and reading. Out: one Trial for all tables given, with remarks on what
// was assumed; or every problem found, each with its file, line, column and text, and then nothing
// is taken. docs/table.md defines the table for people.
#pragma once

#include "base/result.h"
#include "exchange/column_mapping.h"
#include "exchange/kind_definition.h"
#include "exchange/long_table_text.h"
#include "exchange/table_in_hand.h"
#include "exchange/table_options.h"
#include "trials/trial.h"

#include <functional>
#include <span>
#include <string>
#include <string_view>

namespace keenfall::exchange {

// Several tables are one trial: the same blade name is the same blade. The trial is named after the
// first file.
[[nodiscard]] base::ResultOrProblems<trials::Trial> take_tables(std::span<const std::string> paths,
                                                                const TableOptions& options);

// The same; `seen` is told the bytes of each file, as they were taken in.
using BytesSeen = std::function<void(const std::string& path, std::string_view bytes)>;
[[nodiscard]] base::ResultOrProblems<trials::Trial> take_tables(std::span<const std::string> paths,
                                                                const TableOptions& options,
                                                                const BytesSeen& seen);

// The same of tables in memory.
[[nodiscard]] base::ResultOrProblems<trials::Trial> take_tables_in_hand(
    std::span<const TableInHand> tables, const TableOptions& options);

// One table that is already in memory; `file_name` stands in problems and names the trial.
[[nodiscard]] base::ResultOrProblems<trials::Trial> take_table_text(const std::string& text,
                                                                    const std::string& file_name,
                                                                    const TableOptions& options);

}  // namespace keenfall::exchange
