// What each header of a surveyed table is taken for. Private to the folder.
#pragma once

#include "exchange/table_options.h"
#include "exchange/table_seen.h"
#include "exchange/table_survey.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::exchange {

// `options`: with the guesses, which are `proposed`.
[[nodiscard]] std::vector<SurveyedHeader> surveyed_headers(const SurveyedGrid& grid,
                                                           const TableSeen& seen,
                                                           const TableOptions& options,
                                                           const ColumnMap& proposed);

// The place of a header that a problem names as a person reads it; nothing where there is none.
[[nodiscard]] std::optional<std::size_t> place_of_header(const SurveyedGrid& grid,
                                                         const std::string& as_named);

}  // namespace keenfall::exchange
