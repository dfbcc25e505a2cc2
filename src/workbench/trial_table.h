// A trial's readings as the long table that a file or a report holds.
#pragma once

#include "exchange/table_in_hand.h"
#include "trials/trial.h"

#include <string>
#include <vector>

namespace keenfall::workbench {

struct TrialTable {
  std::string csv;  // with all that is struck out or voided; keenfall judge takes it back
  // Does it say all that is recorded of the trial? A kind of one's own is defined again by whoever
  // reads it; runs without anything in them have no row.
  bool is_whole = true;
  std::vector<std::string> left_out;  // what it has no place for: "the hardness of A, which ..."
};

[[nodiscard]] TrialTable trial_table(const trials::Trial& trial);

// The same as cells to type in again: as a tally sheet, where that says all that is recorded, or a
// row a reading.
[[nodiscard]] exchange::TypedRows trial_cells(const trials::Trial& trial);

}  // namespace keenfall::workbench
