// Readings whose own cell names another unit than the rest of their run is read in.
//
// A run is read in the unit that most of its readings name; where the first names one, those that
// name none are in that, and where none is named above them, in that of the other runs or the
// kind's own. A single cell that says otherwise is refused, and says nothing of the cells beside
// it. A column or row of units is a statement of its own: what it says is converted.
#pragma once

#include "exchange/problem_list.h"
#include "exchange/reading_series_register.h"
#include "exchange/run_drafts.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::exchange {

// Takes the odd readings out of their drafts, and their units out of the register. `headers`: of
// the readings, by file; empty where they stand in cells of their own.
void report_odd_units(std::vector<RunDraft>& drafts,
                      std::span<const std::string> headers,
                      ReadingSeriesRegister& told,
                      ProblemList& problems);

}  // namespace keenfall::exchange
