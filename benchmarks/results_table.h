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

// Bars that stood before anything was measured: a value that must stay below, or reach, a number.
struct Bar {
  std::string what;  // "processor time, CPU-s"
  double below = 0;
  double measured = 0;
};

struct LowerBar {
  std::string what;  // "effective draws"
  double at_least = 0;
  double measured = 0;
};

// "bar: processor time, CPU-s, under 30: met (1.92)"
[[nodiscard]] std::string in_words(const Bar& bar);

// "bar: effective draws, at least 400: NOT MET (312)"
[[nodiscard]] std::string in_words(const LowerBar& bar);

}  // namespace keenfall::benchmarks
