// The rows of a surveyed table that are shown: the first, and each that a problem stands in.
// Private to the folder.
#pragma once

#include "exchange/grid.h"
#include "exchange/table_seen.h"
#include "exchange/table_survey.h"

#include <cstddef>
#include <set>
#include <string_view>

namespace keenfall::exchange {

// `lines`: those of problems. Fills in the grid's rows, their numbers and count.
void show_rows_of_text(std::string_view text,
                       const TableSeen& seen,
                       const std::set<std::size_t>& lines,
                       SurveyedGrid& grid);
void show_rows_of_sheet(const Grid& sheet,
                        const TableSeen& seen,
                        const std::set<std::size_t>& lines,
                        SurveyedGrid& grid);

}  // namespace keenfall::exchange
