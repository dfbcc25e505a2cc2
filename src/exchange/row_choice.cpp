#include "exchange/row_choice.h"

#include "exchange/header_meaning.h"
#include "exchange/text_lines.h"

#include <algorithm>

namespace keenfall::exchange {

namespace {

std::optional<std::size_t> position_of(const std::string& name, const MatchedColumns& columns) {
  const std::string wanted = folded_header(name);
  for (std::size_t i = 0; i < columns.headers.size(); ++i) {
    if (folded_header(columns.headers[i]) == wanted) return i;
  }
  const ColumnDefinition* const definition = find_definition(name);
  return definition == nullptr ? std::nullopt : columns.positions[index_of(definition->column)];
}

std::string headers_listed(const MatchedColumns& columns) {
  std::string list;
  for (const std::string& header : columns.headers) {
    if (!header.empty()) list += (list.empty() ? "" : ", ") + excerpt(header);
  }
  return excerpt(list).size() < list.size() ? list.substr(0, 400) : list;
}

}  // namespace

RowChoice::RowChoice(std::span<const RowFilter> filters,
                     const MatchedColumns& columns,
                     ProblemList& problems) {
  for (const RowFilter& filter : filters) {
    if (const auto position = position_of(filter.column, columns)) {
      conditions_.push_back({.position = *position, .filter = filter});
      continue;
    }
    problems.add({problems.current_file(), 0},
                 {.kind = base::ProblemKind::unknown_name,
                  .sentence = "--where names " + in_quotes(filter.column) +
                              ", but the table has no such column. Columns found: " +
                              headers_listed(columns) + ".",
                  .place = {.found = excerpt(filter.column)}});
  }
}

bool RowChoice::is_taken(const Record& record) {
  if (conditions_.empty()) return true;
  ++seen_;
  const bool is_chosen = std::ranges::all_of(conditions_, [&record](const Condition& condition) {
    const bool is_there = condition.position < record.cells.size();
    return says(is_there ? record.cells[condition.position].text : std::string_view{},
                condition.filter.wanted);
  });
  if (!is_chosen) ++left_out_;
  return is_chosen;
}

std::optional<std::string> RowChoice::remark() const {
  if (conditions_.empty()) return std::nullopt;
  std::string words;
  for (const Condition& condition : conditions_) {
    words += (words.empty() ? "" : " and ") + excerpt(condition.filter.column) + "=" +
             excerpt(condition.filter.wanted);
  }
  return "Only rows with " + words + " were taken; left out: " + std::to_string(left_out_) +
         " of " + std::to_string(seen_) + " rows.";
}

}  // namespace keenfall::exchange
