#include "exchange/spreadsheet_file.h"

#include "exchange/spreadsheet_archive.h"
#include "exchange/workbook_formats.h"

namespace keenfall::exchange {

std::string uncalculated_fault() {
  return "The cell holds a formula without a calculated result: open the file in the spreadsheet "
         "program, let it calculate, and save it.";
}

std::string error_fault(const std::string& error) {
  return "The cell holds the error " + error + ".";
}

bool is_spreadsheet(std::string_view bytes) { return bytes.starts_with("PK\x03\x04"); }

base::Result<std::vector<Sheet>> sheets_of(std::string_view bytes) {
  auto archive = SpreadsheetArchive::opened(bytes);
  if (!archive) return base::failed(archive.error());
  if (archive->has("xl/workbook.xml")) return sheets_of_xlsx(*archive);
  if (archive->has("content.xml")) return sheets_of_ods(*archive);
  return base::failed({.kind = base::ProblemKind::unreadable,
                       .sentence = "This is an archive, but no spreadsheet that is read here.",
                       .accepted = "an .xlsx or .ods file, or a CSV file saved as UTF-8 text"});
}

}  // namespace keenfall::exchange
