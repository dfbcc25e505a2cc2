// A table with one line a run taken apart into the rows of a long one.
//
// The header names blade, medium and run, and what was seen of a run: how long it lasted (lasted,
// failed_by, test, test_level), its start and stop reading (start_reading, stop_reading,
// stop_cuts), or readings under headers that are numbers of cuts ("0", "15 cuts", "after 31").
// Every Problem goes to the list.
#pragma once

#include "exchange/expanded_row.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::exchange {

// `header_row`: index into the grid's rows. `delimiter`: of CSV text; 0 in a spreadsheet. Returns
// how it was read, as remarks.
[[nodiscard]] std::vector<std::string> take_runs_table(const Grid& grid,
                                                       std::size_t header_row,
                                                       char delimiter,
                                                       GridReading& reading);

}  // namespace keenfall::exchange
