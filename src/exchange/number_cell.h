// A number as people write it in a cell, read strictly and without regard to the machine's
// language.
//
// In: the cell's text and the table's decimal mark. Out: the number and the text glued behind it
// ("104 gf": 104 and "gf"), or the fault that keeps it from being one number: thousands separators
// are refused because "1,234" is 1.234 to one reader and 1234 to the next. The mark is decided once
// for a table, from all its numbers (DecimalTally).
#pragma once

#include "exchange/decimal_mark.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace keenfall::exchange {

enum class NumberFault { none, not_a_number, thousands, other_mark, not_finite, out_of_range };

struct NumberCell {
  double number = 0;
  std::string_view unit;  // what follows the number
  NumberFault fault = NumberFault::none;
};

// `mark` is point or comma. The text has no blanks around it and is not empty.
[[nodiscard]] NumberCell number_cell(std::string_view text, DecimalMark mark);

// Why the cell is not a number, as the end of a sentence: "“1,234” has a thousands separator".
[[nodiscard]] std::string fault_in_words(NumberFault fault,
                                         std::string_view text,
                                         DecimalMark mark);

// What to do about it, as a further sentence with its space, where an option of the table would
// make it a number; else empty.
[[nodiscard]] std::string way_out(NumberFault fault, DecimalMark mark);

// Counts how the numbers of a table write their decimals, then decides.
class DecimalTally {
 public:
  void add(std::string_view text, std::size_t line, std::string_view column);

  // point or comma; `decide` when "1,234" is all there is to go by.
  [[nodiscard]] DecimalMark decision() const;

  struct Sighting {
    std::string text;
    std::size_t line = 0;
    std::string column;
  };
  // The first number whose comma may be either.
  [[nodiscard]] const std::optional<Sighting>& ambiguous() const { return ambiguous_; }

 private:
  std::size_t points_ = 0;
  std::size_t commas_ = 0;
  std::size_t doubtful_points_ = 0;
  std::optional<Sighting> ambiguous_;
};

}  // namespace keenfall::exchange
