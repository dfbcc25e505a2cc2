// Which rows are to be left out where a blade has two steels, or a piece two hardnesses.
//
// What most rows say stands; of equally many, what is said first. The rows that say otherwise are
// blamed, and the whole run where none of its rows says what stands: it may be another blade's.
#pragma once

#include "exchange/problem_list.h"
#include "exchange/run_drafts.h"

#include <span>

namespace keenfall::exchange {

void blame_odd_statements(std::span<const RunDraft> drafts, ProblemList& problems);

}  // namespace keenfall::exchange
