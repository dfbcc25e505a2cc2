// What was measured, as plain text: a table with units in its heads, and bars with whether they are
// met.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace keenfall::benchmarks {

struct ResultsTable {
  std::vector<std::string> heads;              // each with its unit; the first names the rows
  std::vector<std::vector<std::string>> rows;  // as many cells as heads
};

// Names to the left, numbers to the right.
[[nodiscard]] std::string in_columns(const ResultsTable& table);

// 1234567 as "1,234,567".
[[nodiscard]] std::string grouped(double number);

// A bar that stood before anything was measured: a largest value that must not be reached.
struct Bar {
  std::string what;  // "processor time, CPU-s"
  double below = 0;
  double measured = 0;
};

// "bar: processor time, CPU-s, under 30: met (1.92)"
[[nodiscard]] std::string in_words(const Bar& bar);

}  // namespace keenfall::benchmarks
