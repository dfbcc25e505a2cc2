// What each column holds, in a few plain words, for whoever chooses one: docs/table.md at more
// length.
#pragma once

#include "exchange/table_columns.h"

#include <string_view>

namespace keenfall::exchange {

[[nodiscard]] std::string_view column_in_words(Column column);

}  // namespace keenfall::exchange
