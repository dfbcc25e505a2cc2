// The readings of one run put in order, and what their order gives away.
//
// Within one series, station and repeat the cuts must not fall from row to row: a run that starts
// again is a second run under the first one's name. A numbered repeat stands once at a checkpoint,
// unless one of the two is struck.
#pragma once

#include "exchange/problem_list.h"
#include "exchange/run_drafts.h"
#include "trials/counted.h"

namespace keenfall::exchange {

// Reports at most one fall for the run, and every repeat that stands twice.
void check_reading_order(const RunDraft& draft,
                         const trials::Counted& counted,
                         ProblemList& problems);

// By cuts; rows at the same cuts stay in their order.
void sort_by_cuts(RunDraft& draft);

}  // namespace keenfall::exchange
