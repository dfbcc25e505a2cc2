// A small table of constants that a person keeps: a row a thing, with a name and numbers in named
// columns.
//
// In: CSV text (comma, semicolon or tab; decimal point or comma) whose first row names the columns,
// and what the columns may hold. Out: the rows, numbers in the order of the definitions. Units
// stand in the names of the columns, so cells are bare numbers. Fails with every wrong cell at
// once: its line, its column, what was found and what would be accepted. Spreadsheets are not read
// here.
#pragma once

#include "base/result.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::exchange {

struct NumberColumn {
  std::string name;       // "groove_width_um"
  double lowest = 0;      // accepted itself where is_lowest_accepted
  double highest = 1e12;  // accepted itself
  bool is_lowest_accepted = true;
  std::optional<double> otherwise;  // of an empty cell or a missing column; absent: required
};

struct NamedNumbers {
  std::string name;
  std::vector<double> numbers;  // one per column defined
  std::size_t line = 0;
};

[[nodiscard]] base::ResultOrProblems<std::vector<NamedNumbers>> named_numbers(
    std::string_view text, const std::string& file_name, std::span<const NumberColumn> columns);

// The same of a file.
[[nodiscard]] base::ResultOrProblems<std::vector<NamedNumbers>> named_numbers_in_file(
    const std::string& path, std::span<const NumberColumn> columns);

}  // namespace keenfall::exchange
