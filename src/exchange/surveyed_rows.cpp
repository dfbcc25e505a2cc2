#include "exchange/surveyed_rows.h"

#include "exchange/delimited_text.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::exchange {

namespace {

std::string shown_cell(std::string_view text) {
  if (text.size() <= kMostCharactersShown) return std::string(text);
  std::size_t characters = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const bool is_start = (static_cast<unsigned char>(text[at]) & 0xC0U) != 0x80U;
    if (is_start && ++characters > kMostCharactersShown) {
      return std::string(text.substr(0, at)) + "…";
    }
  }
  return std::string(text);
}

// Decides row by row, in the order in which they stand.
class RowsToShow {
 public:
  RowsToShow(const TableSeen& seen, const std::set<std::size_t>& lines, SurveyedGrid& grid)
      : seen_(seen), lines_(lines), grid_(grid) {}

  // A row that goes from its first line to its last; is it to be added?
  [[nodiscard]] bool wants(std::size_t first_line, std::size_t last_line) {
    const std::size_t index = grid_.row_count++;
    const bool is_header = is_with_header() && index == seen_.header_row;
    if (is_header) grid_.header_row = grid_.rows.size();
    if (index < kMostRowsShown || is_header) return true;
    const auto line = lines_.lower_bound(first_line);
    return line != lines_.end() && *line <= last_line;
  }

  void add(std::size_t line, std::vector<std::string> cells) {
    grid_.rows.push_back(std::move(cells));
    grid_.row_numbers.push_back(line);
  }

 private:
  [[nodiscard]] bool is_with_header() const {
    return seen_.shape == TableShape::long_rows || seen_.shape == TableShape::runs;
  }

  const TableSeen& seen_;
  const std::set<std::size_t>& lines_;
  SurveyedGrid& grid_;
};

}  // namespace

void show_rows_of_text(std::string_view text,
                       const TableSeen& seen,
                       const std::set<std::size_t>& lines,
                       SurveyedGrid& grid) {
  DelimitedReader reader(text, seen.delimiter == '\0' ? '\t' : seen.delimiter);
  RowsToShow rows(seen, lines, grid);
  while (const auto record = reader.next()) {
    std::size_t last_line = record->line;
    if (!record->cells.empty()) last_line = std::max(last_line, record->cells.back().line);
    if (record->fault) last_line = std::max(last_line, record->fault->cell.line);
    if (!rows.wants(record->line, last_line)) continue;
    std::vector<std::string> cells;
    for (const Cell& cell : record->cells) {
      if (cells.size() >= kMostColumnsShown) break;
      cells.push_back(shown_cell(cell.text));
    }
    if (record->fault && cells.size() < kMostColumnsShown) {
      cells.push_back(excerpt(record->fault->cell.text));
    }
    rows.add(record->line, std::move(cells));
  }
}

void show_rows_of_sheet(const Grid& sheet,
                        const TableSeen& seen,
                        const std::set<std::size_t>& lines,
                        SurveyedGrid& grid) {
  RowsToShow rows(seen, lines, grid);
  for (const GridRow& row : sheet.rows) {
    if (!rows.wants(row.line, row.line)) continue;
    std::vector<std::string> cells;
    for (const GridCell& cell : row.cells) {
      if (cells.size() >= kMostColumnsShown) break;
      cells.push_back(shown_cell(cell.text));
    }
    rows.add(row.line, std::move(cells));
  }
}

}  // namespace keenfall::exchange
