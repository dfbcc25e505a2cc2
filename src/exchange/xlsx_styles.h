// Which cell styles of an .xlsx file show a number as a date or as a percentage.
//
// Source: ECMA-376 part 1, 18.8.30 (built-in number formats) and 18.8.10 (cell formats).
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::exchange {

enum class NumberLook { plain, date, percent };

// By the number of the style; a broken text gives those that came before.
[[nodiscard]] std::vector<NumberLook> looks_of_styles(std::string_view styles_xml);

// A day number as 2024-05-01, with a time where it has one ("2024-05-01 14:30").
[[nodiscard]] std::string date_of_serial(double serial, bool is_from_1904);

}  // namespace keenfall::exchange
