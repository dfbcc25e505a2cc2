#include "materials/quantity.h"

#include "materials/spelling.h"
#include "materials/units.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <system_error>

namespace keenfall::materials {

namespace {

bool is_ascii_digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }

base::Problem refused(std::string_view text, std::string sentence) {
  return {.sentence = std::move(sentence),
          .place = {.found = std::string(text)},
          .accepted = "a number and its unit, such as 400gf, 3.9 N or 0.3 mm"};
}

// Length of the leading run of digits, points and commas.
std::size_t digits_and_marks(std::string_view text) {
  std::size_t end = 0;
  while (end < text.size() && (is_ascii_digit(text[end]) || text[end] == '.' || text[end] == ',')) {
    ++end;
  }
  return end;
}

// Length of an exponent at the start of the text ("e-3"), or 0. "e" and a unit is no exponent.
std::size_t exponent_length(std::string_view text) {
  if (text.empty() || (text[0] != 'e' && text[0] != 'E')) return 0;
  std::size_t at = 1;
  if (at < text.size() && (text[at] == '+' || text[at] == '-')) ++at;
  const std::size_t digits = at;
  while (at < text.size() && is_ascii_digit(text[at])) ++at;
  return at > digits ? at : 0;
}

// "1,000" and "12,500" could be thousands; "0,300", "3,9" and "0,3" could not.
bool could_be_thousands(std::string_view mantissa) {
  const auto comma = mantissa.find(',');
  if (comma == std::string_view::npos) return false;
  return mantissa.size() - comma == 4 && comma >= 1 && comma <= 3 && mantissa[0] != '0';
}

}  // namespace

base::Result<Quantity> parse_quantity(std::string_view text) {
  const std::string_view written = trimmed(text);
  std::string_view rest = written;
  const bool negative = rest.starts_with('-');
  if (negative || rest.starts_with('+')) rest.remove_prefix(1);
  const std::string_view mantissa = rest.substr(0, digits_and_marks(rest));
  if (mantissa.empty() || !std::ranges::any_of(mantissa, is_ascii_digit)) {
    return base::failed(refused(written, "a quantity must begin with a number"));
  }
  const auto marks = std::ranges::count_if(mantissa, [](char c) { return c == '.' || c == ','; });
  if (marks > 1) {
    return base::failed(
        refused(written, "“" + std::string(mantissa) + "” has more than one decimal mark"));
  }
  if (could_be_thousands(mantissa)) {
    return base::failed(refused(written,
                                "“" + std::string(mantissa) +
                                    "” could be thousands or a decimal comma; write it "
                                    "without a comma"));
  }
  rest.remove_prefix(mantissa.size());
  const std::size_t exponent = exponent_length(rest);
  std::string plain = std::string(mantissa) + std::string(rest.substr(0, exponent));
  std::ranges::replace(plain, ',', '.');
  rest.remove_prefix(exponent);
  Quantity quantity;
  const auto [end, error] =
      std::from_chars(plain.data(), plain.data() + plain.size(), quantity.number);
  if (error != std::errc{} || end != plain.data() + plain.size()) {
    return base::failed(refused(written, "“" + plain + "” is not a number that can be held"));
  }
  if (negative) quantity.number = -quantity.number;
  const Unit* unit = find_unit(rest);
  quantity.unit = std::string(unit != nullptr ? unit->name : trimmed(rest));
  return quantity;
}

}  // namespace keenfall::materials
