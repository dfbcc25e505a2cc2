// The blades of the trial, from what the runs' rows say of them.
//
// A steel holds for the whole blade. A hardness in a row that names a specimen is that specimen's,
// else the blade's. Two steels for one blade, or two hardnesses for one piece, are a Problem that
// names both lines.
#pragma once

#include "exchange/problem_list.h"
#include "exchange/run_drafts.h"
#include "trials/blade.h"

#include <span>
#include <vector>

namespace keenfall::exchange {

[[nodiscard]] std::vector<trials::Blade> blades_told(std::span<const RunDraft> drafts,
                                                     ProblemList& problems);

}  // namespace keenfall::exchange
