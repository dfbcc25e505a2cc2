// The table of all runs of a judgement: used or not, how long each lasted, what was noticed.
#pragma once

#include "page/html.h"
#include "telling/report.h"

#include <cstddef>

namespace keenfall::page {

// Every row of a run that is in the pictures has the key by which they are marked as its own
// (data-run="judgement:run"). Columns that say nothing of any run are left out.
void add_run_list(Html& html, const telling::Report& report, std::size_t judgement_index);

}  // namespace keenfall::page
