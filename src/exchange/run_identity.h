// What tells one run from another, and what of it may be left empty in some of its rows.
//
// A run is known by blade, medium and name, and by all that makes its arm; an empty cell of those
// means what the run's other rows say.
#pragma once

#include "exchange/run_drafts.h"
#include "exchange/table_row.h"

#include <span>
#include <string>

namespace keenfall::exchange {

[[nodiscard]] std::span<const Column> name_columns();
// The columns that make an arm (and the specimen), and those of which a run has one.
[[nodiscard]] std::span<const Column> arm_columns();
[[nodiscard]] std::span<const Column> run_columns();

// What the row says in the column; where it is blank, `at` is the row.
[[nodiscard]] ToldCell told_cell(const TableRow& row, Column column);
// The same for rows that agree literally in all that names and makes a run.
[[nodiscard]] std::string run_key_of(const TableRow& row);
// The same for runs of one blade, medium and name.
[[nodiscard]] std::string name_key_of(const RunDraft& draft);
// Both say something, and not the same.
[[nodiscard]] bool says_otherwise(const ToldCell& one, const ToldCell& other);
// Whether no cell that makes an arm tells them apart.
[[nodiscard]] bool may_be_one_run(const RunDraft& one, const RunDraft& other);
// "Run “2” of blade “A” in “felt”".
[[nodiscard]] std::string run_in_words(const RunDraft& draft);

}  // namespace keenfall::exchange
