#include "exchange/xlsx_styles.h"

#include "base/plain_number.h"
#include "exchange/xml_reader.h"

#include <charconv>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <map>

namespace keenfall::exchange {

namespace {

NumberLook look_of_code(std::string_view code) {
  bool in_quotes = false;
  bool in_brackets = false;
  NumberLook look = NumberLook::plain;
  for (std::size_t i = 0; i < code.size(); ++i) {
    const char c = code[i];
    if (c == '"') in_quotes = !in_quotes;
    if (in_quotes) continue;
    if (c == '\\' || c == '_' || c == '*') {
      ++i;
    } else if (c == '[') {
      in_brackets = true;
    } else if (c == ']') {
      in_brackets = false;
    } else if (c == '%' && !in_brackets) {
      return NumberLook::percent;
    } else if (!in_brackets && std::string_view("yYdDhH").find(c) != std::string_view::npos) {
      look = NumberLook::date;
    }
  }
  return look;
}

NumberLook look_of_format(int format, const std::map<int, NumberLook>& own) {
  if (const auto found = own.find(format); found != own.end()) return found->second;
  if (format == 9 || format == 10) return NumberLook::percent;
  const bool is_date = (format >= 14 && format <= 22) || (format >= 45 && format <= 47);
  return is_date ? NumberLook::date : NumberLook::plain;
}

std::string two_digits(unsigned number) {
  return (number < 10 ? "0" : "") + std::to_string(number);
}

}  // namespace

std::vector<NumberLook> looks_of_styles(std::string_view styles_xml) {
  std::vector<NumberLook> looks;
  std::map<int, NumberLook> own;
  bool in_cell_formats = false;
  XmlReader xml(styles_xml);
  for (auto found = xml.next(); found != XmlReader::Found::done; found = xml.next()) {
    if (found == XmlReader::Found::broken) break;
    if (found == XmlReader::Found::text) continue;
    const bool is_start = found == XmlReader::Found::start;
    if (xml.name() == "cellXfs") in_cell_formats = is_start;
    if (!is_start) continue;
    const std::string number = xml.attribute("numFmtId");
    int format = 0;
    std::from_chars(number.data(), number.data() + number.size(), format);
    if (xml.name() == "numFmt") own[format] = look_of_code(xml.attribute("formatCode"));
    if (xml.name() == "xf" && in_cell_formats) looks.push_back(look_of_format(format, own));
  }
  return looks;
}

std::string date_of_serial(double serial, bool is_from_1904) {
  constexpr double kLastDay = 2'958'465;  // 9999-12-31
  if (!(serial >= 0) || serial > kLastDay) return base::plain_number(serial);
  using std::chrono::days;
  using std::chrono::sys_days;
  using std::chrono::year;
  // Day 60 of the 1900 count is a 29 February that never was, so day 1 is one day late before it.
  const double whole = std::floor(serial);
  const int shift = !is_from_1904 && whole < 60 ? 1 : 0;
  const sys_days epoch =
      is_from_1904 ? sys_days{year{1904} / 1 / 1} : sys_days{year{1899} / 12 / 30};
  const std::chrono::year_month_day day{epoch + days{static_cast<int>(whole) + shift}};
  const auto minutes = static_cast<unsigned>(std::lround((serial - whole) * 24 * 60));
  std::string text = std::to_string(static_cast<int>(day.year())) + "-" +
                     two_digits(static_cast<unsigned>(day.month())) + "-" +
                     two_digits(static_cast<unsigned>(day.day()));
  if (minutes > 0) text += " " + two_digits(minutes / 60 % 24) + ":" + two_digits(minutes % 60);
  return text;
}

}  // namespace keenfall::exchange
