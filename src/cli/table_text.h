// A table of what is told on a terminal, with the words below it; columns that do not fit are
// named.
#pragma once

#include "cli/look.h"
#include "telling/table.h"

#include <string>

namespace keenfall::cli {

// Ends in a newline; empty for a table without columns.
[[nodiscard]] std::string table_text(const telling::Table& table, const Look& look);

}  // namespace keenfall::cli
