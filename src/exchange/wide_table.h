// A wide table taken apart into the rows of a long one: cuts down the first column, runs across.
//
// Above (or below) the readings stand rows whose label, in the first column, names one of our
// columns: blade, medium, run, steel, kind and so on. Their cells hold for the column beneath. A
// blade, medium, run or anything else that makes an arm or a series holds to the right until the
// next one is written, as merged cells do; what concerns one run only (order, voided, note) does
// not. Several columns may be repeats or stations of one run. An empty cell under cuts means the
// cuts above it. Every Problem goes to the list.
#pragma once

#include "exchange/expanded_row.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::exchange {

// `label_column`: from 0. `is_comma_separated`: too long a row may be one cut by a decimal comma.
// Returns how it was read, as remarks.
[[nodiscard]] std::vector<std::string> take_wide_table(const Grid& grid,
                                                       std::size_t label_column,
                                                       bool is_comma_separated,
                                                       GridReading& reading);

}  // namespace keenfall::exchange
