// A Trial written as the long table it could have been read from.
#pragma once

#include "exchange/table_in_hand.h"
#include "trials/trial.h"

#include <string>

namespace keenfall::exchange {

// CSV with commas, decimal points and LF; the columns that have content, in the order of
// docs/table.md. Reading it back gives the same trial but for remarks and lines, for trials that a
// table can hold: runs with a reading, event, note, deviation or void; blades with a run; hardness
// in HRC; kinds known or defined again by the reader.
[[nodiscard]] std::string long_table_of(const trials::Trial& trial);

// The same as cells, a row of texts each, the headers first.
[[nodiscard]] TypedRows long_cells_of(const trials::Trial& trial);

// As a wide table, as a tally sheet is written: a column a run, a row a checkpoint, repeats side by
// side in a cell. It has no place for edge lives, events and stations, nor for a run that was read
// in several series or has more than one note, and may be read back otherwise where reasons for
// strikes read like something else: whoever has use for it reads it back and compares.
[[nodiscard]] TypedRows wide_cells_of(const trials::Trial& trial);

// Does a table that says so where readings are struck out mean it as the reason? "no" and "0" mean
// that nothing is struck, "x" and "yes" that no reason is given.
[[nodiscard]] bool is_reason_in_tables(const std::string& text);

}  // namespace keenfall::exchange
