// A run that is over at the bench, as its trial keeps it.
//
// Nothing is left out: readings of a start that was sharpened anew are struck out with that reason,
// checkpoints that were passed by and a start that was not matched are deviations, what was done
// to the edge is a note, a run that does not count is voided. What was taken back is not in it.
#pragma once

#include "bench/entry.h"
#include "bench/run_sheet.h"
#include "trials/trial.h"

#include <span>
#include <vector>

namespace keenfall::bench {

struct CutRun {
  std::vector<trials::ReadingSeries> series;  // one a unit that was typed in; at least one
  trials::Run run;                            // readings are of these, each as it was typed
};

// The run may be under way still: then it is as far as it went.
[[nodiscard]] CutRun as_run(const RunSheet& sheet, std::span<const Entry> entries);

}  // namespace keenfall::bench
