#include "exchange/package_cell.h"

#include "exchange/text_lines.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <system_error>

namespace keenfall::exchange {

namespace {

PackageCellRead cell_fault(const char* why) { return {.value = {}, .fault = why}; }

// Digits as from_chars reads them: no blanks around, no '+', no grouping, a point.
std::string plain_digits(std::string_view text, const PackageColumn& column) {
  text = trimmed(text);
  if (text.starts_with('+') && !text.starts_with("+-")) text.remove_prefix(1);
  std::string digits;
  for (const char c : text) {
    if (c == column.group_mark && c != '\0') continue;
    // A point that is no decimal mark must not become one.
    if (c == '.' && column.decimal_mark != '.') return "";
    digits += c == column.decimal_mark ? '.' : c;
  }
  return digits;
}

// "12.000" is 12, as programs write whole numbers in columns with missing ones.
void drop_zero_decimals(std::string& digits) {
  const std::size_t point = digits.find('.');
  if (point == std::string::npos || point + 1 == digits.size()) return;
  if (digits.find_first_not_of('0', point + 1) == std::string::npos) digits.resize(point);
}

PackageCellRead whole_number_cell(std::string digits) {
  drop_zero_decimals(digits);
  std::int64_t number = 0;
  const char* const end = digits.data() + digits.size();
  const auto [stop, failure] = std::from_chars(digits.data(), end, number);
  if (failure == std::errc::result_out_of_range && stop == end) {
    return cell_fault("which is too large for a whole number of 64 bits");
  }
  if (failure != std::errc{} || stop != end) {
    return cell_fault("where a whole number belongs");
  }
  return {.value = number};
}

PackageCellRead finite_number_cell(const std::string& digits) {
  double number = 0;
  const char* const end = digits.data() + digits.size();
  const auto [stop, failure] = std::from_chars(digits.data(), end, number);
  if (failure == std::errc::result_out_of_range && stop == end) {
    return cell_fault("which is too large, or too close to zero, for a double-precision number");
  }
  if (failure != std::errc{} || stop != end) {
    return cell_fault("where a number belongs");
  }
  if (!std::isfinite(number)) return cell_fault("where a finite number belongs");
  return {.value = number};
}

}  // namespace

PackageCellRead package_cell(std::string_view text, const PackageColumn& column) {
  const auto& markers = column.missing_values;
  if (std::ranges::find(markers, text) != markers.end()) {
    if (column.field.may_be_missing) return {};
    const bool is_empty_text = column.field.type == FieldType::string && text.empty();
    if (!is_empty_text) return cell_fault("where a value may not be missing");
  }
  switch (column.field.type) {
    case FieldType::integer:
      return whole_number_cell(plain_digits(text, column));
    case FieldType::number:
      return finite_number_cell(plain_digits(text, column));
    case FieldType::string:
      break;
  }
  return {.value = std::string(text)};
}

}  // namespace keenfall::exchange
