#include "exchange/row_filter.h"

#include "exchange/number_cell.h"
#include "exchange/text_lines.h"

#include <optional>

namespace keenfall::exchange {

namespace {

std::optional<double> number_alone_in(std::string_view text) {
  if (text.empty()) return std::nullopt;
  const DecimalMark mark = text.find(',') == text.npos ? DecimalMark::point : DecimalMark::comma;
  const NumberCell number = number_cell(text, mark);
  if (number.fault != NumberFault::none || !number.unit.empty()) return std::nullopt;
  return number.number;
}

}  // namespace

base::Result<RowFilter> parse_row_filter(std::string_view text) {
  const std::size_t equals = text.find('=');
  const std::string_view column = trimmed(text.substr(0, equals));
  if (equals == text.npos || column.empty()) {
    return base::failed(
        {.sentence = "Rows are chosen as column=value; " + in_quotes(text) + " lacks a side.",
         .place = {.column = "--where", .found = excerpt(text)},
         .accepted = "distance_mm=1, where distance_mm is a header of the table"});
  }
  return RowFilter{.column = std::string(column),
                   .wanted = std::string(trimmed(text.substr(equals + 1)))};
}

bool says(std::string_view cell, std::string_view wanted) {
  if (trimmed(cell) == trimmed(wanted)) return true;
  const auto number = number_alone_in(trimmed(cell));
  return number && number == number_alone_in(trimmed(wanted));
}

}  // namespace keenfall::exchange
