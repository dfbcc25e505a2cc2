#include "exchange/number_cell.h"

#include "base/require.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <system_error>

namespace keenfall::exchange {

namespace {

constexpr std::string_view kTypographicMinus = "\xE2\x88\x92";  // U+2212
constexpr std::string_view kTypographicApostrophe = "\xE2\x80\x99";
constexpr std::size_t kLongestNumber = 64;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool is_mark(char c) { return c == '.' || c == ','; }

// Digits, marks and an exponent, without the sign.
std::size_t body_length(std::string_view text) {
  std::size_t end = 0;
  while (end < text.size() && (is_digit(text[end]) || is_mark(text[end]))) ++end;
  if (end == 0 || end >= text.size() || (text[end] != 'e' && text[end] != 'E')) return end;
  std::size_t digits = end + 1;
  if (digits < text.size() && (text[digits] == '-' || text[digits] == '+')) ++digits;
  const std::size_t first = digits;
  while (digits < text.size() && is_digit(text[digits])) ++digits;
  return digits > first ? digits : end;
}

bool is_not_finite(std::string_view unsigned_text) {
  const std::string word = folded(unsigned_text);
  return word == "nan" || word == "inf" || word == "infinity" || word == "∞";
}

// What the marks in the body make impossible.
NumberFault marks_fault(std::string_view body, std::string_view rest, DecimalMark mark) {
  const auto points = std::ranges::count(body, '.');
  const auto commas = std::ranges::count(body, ',');
  const bool separated = !rest.empty() && is_digit(rest.front());
  const bool apostrophe = (rest.starts_with("'") && rest.size() > 1 && is_digit(rest[1])) ||
                          rest.starts_with(kTypographicApostrophe);
  if (separated || apostrophe) return NumberFault::thousands;
  if (points > 0 && commas > 0) {
    return points == 1 || commas == 1 ? NumberFault::thousands : NumberFault::not_a_number;
  }
  if (points > 1 || commas > 1) return NumberFault::not_a_number;
  const bool has_other = mark == DecimalMark::point ? commas > 0 : points > 0;
  return has_other ? NumberFault::other_mark : NumberFault::none;
}

NumberCell converted(std::string_view body, bool is_negative) {
  std::array<char, kLongestNumber> plain{};
  if (body.size() > plain.size()) return {.fault = NumberFault::not_a_number};
  std::ranges::transform(body, plain.begin(), [](char c) { return c == ',' ? '.' : c; });
  const char* const end = plain.data() + body.size();
  double number = 0;
  const auto result = std::from_chars(plain.data(), end, number);
  if (result.ec == std::errc::result_out_of_range) return {.fault = NumberFault::out_of_range};
  if (result.ec != std::errc{} || result.ptr != end) return {.fault = NumberFault::not_a_number};
  return {.number = is_negative ? -number : number};
}

// 1 to 3 digits without a leading zero, a mark, 3 digits: a decimal fraction or a thousand.
bool may_be_thousands(std::string_view body, std::size_t mark_at) {
  return mark_at >= 1 && mark_at <= 3 && body[0] != '0' && body.size() == mark_at + 4;
}

std::string_view without_sign(std::string_view text) {
  if (text.starts_with(kTypographicMinus)) return text.substr(kTypographicMinus.size());
  return text.starts_with('-') || text.starts_with('+') ? text.substr(1) : text;
}

}  // namespace

NumberCell number_cell(std::string_view text, DecimalMark mark) {
  base::require(mark != DecimalMark::decide, "numbers are read with a decided decimal mark");
  const bool is_negative = text.starts_with('-') || text.starts_with(kTypographicMinus);
  const std::string_view magnitude = without_sign(text);
  const std::size_t length = body_length(magnitude);
  if (length == 0) {
    return {.fault =
                is_not_finite(magnitude) ? NumberFault::not_finite : NumberFault::not_a_number};
  }
  const std::string_view body = magnitude.substr(0, length);
  const std::string_view rest = trimmed(magnitude.substr(length));
  const NumberFault fault = marks_fault(body, rest, mark);
  if (fault != NumberFault::none) return {.fault = fault};
  NumberCell cell = converted(body, is_negative);
  cell.unit = rest;
  return cell;
}

std::string fault_in_words(NumberFault fault, std::string_view text, DecimalMark mark) {
  const std::string found = in_quotes(text);
  switch (fault) {
    case NumberFault::thousands:
      return found + " seems to have a thousands separator; write the digits together";
    case NumberFault::other_mark:
      return mark == DecimalMark::comma
                 ? found + " has a decimal point, but this table writes decimals with a comma"
                 : found +
                       " has a comma, but decimals are written with a point here "
                       "(and thousands without any separator)";
    case NumberFault::not_finite:
      return found + " is not a finite number";
    case NumberFault::out_of_range:
      return found + " is too large or too small to be held";
    case NumberFault::not_a_number:
    case NumberFault::none:
      break;
  }
  return found + " is not a number";
}

std::string way_out(NumberFault fault, DecimalMark mark) {
  if (fault != NumberFault::other_mark || mark == DecimalMark::comma) return {};
  return " If the commas of this table are decimal marks, say --decimal=comma.";
}

void DecimalTally::add(std::string_view text, std::size_t line, std::string_view column) {
  if (text.find_first_of(".,") == text.npos) return;
  const std::string_view magnitude = without_sign(text);
  const std::string_view body = magnitude.substr(0, body_length(magnitude));
  const std::size_t mark_at = body.find_first_of(".,");
  if (mark_at == body.npos || body.find_first_of(".,", mark_at + 1) != body.npos) return;
  const bool is_doubtful = may_be_thousands(body, mark_at);
  if (body[mark_at] == '.') {
    ++(is_doubtful ? doubtful_points_ : points_);
  } else if (!is_doubtful) {
    ++commas_;
  } else if (!ambiguous_) {
    ambiguous_ = Sighting{.text = std::string(text), .line = line, .column = std::string(column)};
  }
}

DecimalMark DecimalTally::decision() const {
  if (commas_ == 0 && points_ == 0 && ambiguous_) return DecimalMark::decide;
  return commas_ > 0 && commas_ >= points_ ? DecimalMark::comma : DecimalMark::point;
}

}  // namespace keenfall::exchange
