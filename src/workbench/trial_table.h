// A trial's readings as the long table that a file or a report holds.
#pragma once

#include "trials/trial.h"

#include <string>

namespace keenfall::workbench {

struct TrialTable {
  std::string csv;  // with all that is struck out or voided; keenfall judge takes it back
  // Does it say all that is recorded of the trial? A kind of one's own is defined again by whoever
  // reads it; runs without anything in them have no row.
  bool is_whole = true;
};

[[nodiscard]] TrialTable trial_table(const trials::Trial& trial);

}  // namespace keenfall::workbench
