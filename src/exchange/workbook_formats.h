// The two formats of spreadsheet_file.h, each read from its archive.
#pragma once

#include "exchange/spreadsheet_archive.h"
#include "exchange/spreadsheet_file.h"

#include <vector>

namespace keenfall::exchange {

[[nodiscard]] base::Result<std::vector<Sheet>> sheets_of_xlsx(const SpreadsheetArchive& archive);
[[nodiscard]] base::Result<std::vector<Sheet>> sheets_of_ods(const SpreadsheetArchive& archive);

[[nodiscard]] std::string uncalculated_fault();
[[nodiscard]] std::string error_fault(const std::string& error);

}  // namespace keenfall::exchange
