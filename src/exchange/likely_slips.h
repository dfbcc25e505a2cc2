// Readings that are likely slips of the hand, named beside their cells and taken as they stand.
//
// Each is held against its neighbours in the run: the other readings of its kind, thread and
// station at the same checkpoint and at those before and after it; of the first and last
// checkpoint, at the two nearest. It is a likely slip where it lies on the same side of all of
// them, and 5 times off the nearest; or 8 times, at the ends of a run and the way edges blunt,
// since the last step of a run can be a large one. A single neighbour asks about the later of the
// two. A reading that stands twice, where the run has mostly fewer readings at a checkpoint or all
// of them stand twice, is a row that may have been copied. Of kinds that make a curve; struck
// readings and void runs are passed over. Limits: common practice, no source.
#pragma once

#include "exchange/problem_list.h"
#include "exchange/reading_series_register.h"
#include "exchange/run_drafts.h"
#include "trials/counted.h"

#include <span>
#include <string>

namespace keenfall::exchange {

// In: a run sorted by cuts, the units of its readings filled in. `told`: what the series of its
// readings index into. `headers`: of the readings, by file.
void notice_likely_slips(const RunDraft& draft,
                         std::span<const SeriesAsTold> told,
                         const trials::Counted& counted,
                         std::span<const std::string> headers,
                         ProblemList& problems);

}  // namespace keenfall::exchange
