// The part of TableIntake that takes spreadsheets: which sheets, and each as a table of its own.
#include "exchange/table_intake.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <utility>

namespace keenfall::exchange {

namespace {

std::string list_of_sheets(const std::vector<Sheet>& sheets) {
  std::string list;
  for (const Sheet& sheet : sheets) list += (list.empty() ? "" : ", ") + excerpt(sheet.name);
  return list;
}

}  // namespace

void TableIntake::take_spreadsheet(std::string_view bytes, const std::string& file_name) {
  auto sheets = sheets_of(bytes);
  if (!sheets) return report(sheets.error());
  const std::vector<std::size_t> chosen =
      options_.sheets.empty() ? chosen_sheets(*sheets) : named_sheets(*sheets);
  for (const std::size_t i : chosen) {
    take_sheet(std::move((*sheets)[i]), file_name, chosen.size() > 1);
  }
}

std::vector<std::size_t> TableIntake::named_sheets(const std::vector<Sheet>& sheets) {
  std::vector<std::size_t> chosen;
  for (const std::string& wanted : options_.sheets) {
    auto found = std::ranges::find(sheets, wanted, &Sheet::name);
    if (found == sheets.end()) {
      found = std::ranges::find_if(
          sheets, [&wanted](const Sheet& sheet) { return folded(sheet.name) == folded(wanted); });
    }
    if (found == sheets.end()) {
      report({.kind = base::ProblemKind::unknown_name,
              .sentence = "There is no sheet " + in_quotes(wanted) + " in this spreadsheet.",
              .place = {.found = excerpt(wanted)},
              .accepted = list_of_sheets(sheets)});
      continue;
    }
    const auto index = static_cast<std::size_t>(found - sheets.begin());
    if (std::ranges::find(chosen, index) == chosen.end()) chosen.push_back(index);
  }
  return chosen;
}

// All sheets that look like tables; the only one that holds anything, whatever it looks like.
std::vector<std::size_t> TableIntake::chosen_sheets(const std::vector<Sheet>& sheets) {
  std::vector<std::size_t> chosen;
  std::vector<std::size_t> filled;
  std::string left_out;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const Sheet& sheet = sheets[i];
    const bool is_empty = sheet.grid.rows.empty();
    if (!is_empty) filled.push_back(i);
    const auto shape = recognise_shape(sheet.grid, options_);
    const bool is_table = !is_empty && (!shape || shape->is_certain);
    if (is_table && !sheet.is_hidden) {
      chosen.push_back(i);
      continue;
    }
    left_out += (left_out.empty() ? "" : ", ") + in_quotes(sheet.name) +
                (is_empty   ? " (empty)"
                 : is_table ? " (hidden)"
                            : " (no table)");
  }
  if (chosen.empty() && filled.size() == 1) return filled;
  if (chosen.empty()) {
    report({.kind = base::ProblemKind::unsuitable_data,
            .sentence = filled.empty()
                            ? "The spreadsheet is empty."
                            : "No sheet of this spreadsheet looks like a table: " + left_out + ".",
            .accepted = "a sheet that names blade, medium and run; --sheet says which"});
    return {};
  }
  if (!left_out.empty()) remarks_.push_back("Sheets left out: " + left_out + ".");
  return chosen;
}

void TableIntake::begin_sheet(const std::string& file_name, const std::string& sheet) {
  problems_.begin_file(file_name + ", sheet " + excerpt(sheet), PlaceNaming::cells);
  seen_.push_back({.source = source_count_ - 1, .sheet = sheet});
}

void TableIntake::take_sheet(Sheet sheet, const std::string& file_name, bool is_one_of_several) {
  begin_sheet(file_name, sheet.name);
  if (sheet.grid.rows.empty()) {
    return report({.kind = base::ProblemKind::unsuitable_data, .sentence = "The sheet is empty."});
  }
  const auto shape = recognise_shape(sheet.grid, options_);
  if (!shape) return report(shape.error());
  see(*shape, '\0');
  std::string comments;
  for (const GridRow& row : sheet.grid.rows) {
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
      if (row.cells[c].comment.empty()) continue;
      comments += (comments.empty() ? "" : "; ") + column_letters(c + 1) +
                  std::to_string(row.line) + " " + in_quotes(row.cells[c].comment);
    }
  }
  const std::size_t before = remarks_.size();
  take_grid(std::move(sheet.grid), *shape, '\0');
  if (!comments.empty()) remarks_.push_back("Comments pinned to cells: " + comments + ".");
  if (!is_one_of_several) return;
  for (std::size_t i = before; i < remarks_.size(); ++i) {
    remarks_[i].insert(0, "Sheet " + excerpt(sheet.name) + ": ");
  }
}

}  // namespace keenfall::exchange
