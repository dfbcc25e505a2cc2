// The command that judges the table of a report again, to the same verdicts and numbers.
//
// In: the trial, and what was asked of it when it was judged. How its tables were read is no part
// of the command: the table that is told (trial_table.h) says that in its own columns, all but the
// kinds of reading that somebody defined.
#pragma once

#include "trials/trial.h"
#include "workbench/judge_tables.h"

#include <string>

namespace keenfall::workbench {

// "keenfall judge readings.csv --worth-it=2 --seed=1", as a shell takes it.
[[nodiscard]] std::string judged_again_by(const trials::Trial& trial,
                                          const JudgeOptions& options,
                                          const std::string& table);

}  // namespace keenfall::workbench
