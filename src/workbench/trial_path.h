// Where a trial stands on its path (ask, plan, judge, tell), and what comes next.
//
// A trial that was taken from a table was neither asked nor planned here; it can be judged all the
// same.
#pragma once

#include "wire/home.h"

#include <cstddef>
#include <string>

namespace keenfall::workbench {

struct TrialStanding {
  std::size_t runs = 0;
  bool is_claimed = false;    // a question is written down
  bool is_planned = false;    // arms, checkpoints and runs are
  bool is_sealed = false;     // both are fixed, with the time
  int runs_read_before = 0;   // when they were
  bool is_judged = false;     // by the full engine, at any time
  bool judged_as_is = false;  // and nothing was added or struck since
  std::string judged_on;      // "2026-11-26"; of the newest judging
};

[[nodiscard]] wire::Path path_of(const TrialStanding& standing);

}  // namespace keenfall::workbench
