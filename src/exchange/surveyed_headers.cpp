#include "exchange/surveyed_headers.h"

#include "base/plain_number.h"
#include "exchange/column_words.h"
#include "exchange/delimited_text.h"
#include "exchange/header_meaning.h"
#include "exchange/problem_list.h"
#include "exchange/table_shape.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <utility>

namespace keenfall::exchange {

namespace {

bool is_among(const ColumnMap& mappings, const std::string& theirs) {
  return std::ranges::any_of(mappings, [&](const ColumnMapping& mapping) {
    return folded_header(mapping.theirs) == folded_header(theirs);
  });
}

SurveyedHeader header_taken_for(const std::string& theirs,
                                const HeaderMeaning& meaning,
                                const ColumnMap& proposed) {
  const bool is_proposed = is_among(proposed, theirs);
  std::string words(column_in_words(meaning.column));
  if (!meaning.unit.name.empty()) words += ", in " + meaning.unit.name;
  return {.theirs = theirs,
          .ours = std::string(definition_of(meaning.column).name),
          .words = std::move(words),
          .is_own_name = meaning.is_own_name && !is_proposed,
          .is_proposed = is_proposed,
          .row = {}};
}

SurveyedHeader header_left(const std::string& theirs) { return {.theirs = theirs, .row = {}}; }

// "0", "15 cuts": a column of readings in a table with a line a run.
SurveyedHeader readings_after(const std::string& theirs, double cuts) {
  return {.theirs = theirs,
          .words = "readings after " + base::plain_number(cuts) + (cuts == 1 ? " cut" : " cuts"),
          .row = {}};
}

// The header as match_columns has it: one column of ours is in one place only.
std::optional<MatchedColumns> matched_as_taken(const std::vector<std::string>& row,
                                               const TableOptions& options) {
  std::vector<Cell> cells;
  for (const std::string& text : row) cells.push_back({.text = text, .line = 1});
  ProblemList passed_over;
  passed_over.begin_file("");
  return match_columns({.line = 1, .cells = cells, .fault = std::nullopt},
                       options.columns,
                       passed_over,
                       options.defined_kinds,
                       0);
}

std::vector<SurveyedHeader> headers_across(const std::vector<std::string>& row,
                                           bool is_runs,
                                           const TableOptions& options,
                                           const ColumnMap& proposed) {
  const auto matched = matched_as_taken(row, options);
  std::vector<SurveyedHeader> headers;
  for (std::size_t c = 0; c < row.size(); ++c) {
    const auto meaning = meaning_by(options, row[c]);
    const bool is_used =
        meaning && (!matched || matched->positions[index_of(meaning->column)] == c);
    const auto cuts = is_runs ? cuts_in_header(row[c]) : std::nullopt;
    if (is_used) {
      headers.push_back(header_taken_for(row[c], *meaning, proposed));
    } else {
      headers.push_back(cuts ? readings_after(row[c], *cuts) : header_left(row[c]));
    }
  }
  return headers;
}

std::vector<SurveyedHeader> labels_down(const SurveyedGrid& grid,
                                        std::size_t label_column,
                                        const TableOptions& options,
                                        const ColumnMap& proposed) {
  std::vector<SurveyedHeader> labels;
  for (std::size_t r = 0; r < grid.rows.size(); ++r) {
    if (label_column >= grid.rows[r].size()) continue;
    const std::string& text = grid.rows[r][label_column];
    const auto meaning = meaning_by(options, text);
    const bool is_start = meaning && meaning->column == Column::start_reading;
    if (text.empty() || is_start || (!meaning && cuts_in_header(text))) continue;
    SurveyedHeader label = meaning ? header_taken_for(text, *meaning, proposed) : header_left(text);
    label.row = r;
    labels.push_back(std::move(label));
  }
  return labels;
}

}  // namespace

std::vector<SurveyedHeader> surveyed_headers(const SurveyedGrid& grid,
                                             const TableSeen& seen,
                                             const TableOptions& options,
                                             const ColumnMap& proposed) {
  if (grid.shape == TableShape::wide) {
    return labels_down(grid, seen.label_column, options, proposed);
  }
  if (!grid.header_row) return {};
  return headers_across(
      grid.rows[*grid.header_row], grid.shape == TableShape::runs, options, proposed);
}

std::optional<std::size_t> place_of_header(const SurveyedGrid& grid, const std::string& as_named) {
  if (!grid.header_row || as_named.empty()) return std::nullopt;
  const std::vector<std::string>& header = grid.rows[*grid.header_row];
  const auto found = std::ranges::find_if(
      header, [&](const std::string& text) { return excerpt(text) == as_named; });
  if (found == header.end()) return std::nullopt;
  return static_cast<std::size_t>(found - header.begin());
}

}  // namespace keenfall::exchange
