#include "benchmarks/results_table.h"

#include "base/plain_number.h"
#include "base/require.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace keenfall::benchmarks {

namespace {

std::string line_of(const std::string& bar, bool is_met, double measured) {
  return fmt::format(
      "  bar: {}: {} ({})\n", bar, is_met ? "met" : "NOT MET", base::with_figures(measured, 3));
}

}  // namespace

std::string in_columns(const ResultsTable& table) {
  std::vector<std::vector<std::string>> lines{table.heads};
  lines.insert(lines.end(), table.rows.begin(), table.rows.end());
  std::vector<std::size_t> widths(table.heads.size(), 0);
  for (const auto& line : lines) {
    base::require(line.size() == widths.size(), "a row has as many cells as the table has heads");
    for (std::size_t i = 0; i < line.size(); ++i) widths[i] = std::max(widths[i], line[i].size());
  }
  std::string text;
  for (const auto& line : lines) {
    text += fmt::format("  {:<{}}", line.front(), widths.front());
    for (std::size_t i = 1; i < line.size(); ++i)
      text += fmt::format("  {:>{}}", line[i], widths[i]);
    text += "\n";
  }
  return text;
}

std::string grouped(double number) {
  std::string digits = fmt::format("{:.0f}", std::round(number));
  const std::size_t sign = digits.starts_with('-') ? 1 : 0;
  for (std::size_t at = digits.size(); at > sign + 3;) {
    at -= 3;
    digits.insert(at, ",");
  }
  return digits;
}

std::string in_words(const Bar& bar) {
  return line_of(bar.what + ", under " + base::plain_number(bar.below),
                 bar.measured < bar.below,
                 bar.measured);
}

std::string in_words(const LowerBar& bar) {
  return line_of(bar.what + ", at least " + base::plain_number(bar.at_least),
                 bar.measured >= bar.at_least,
                 bar.measured);
}

}  // namespace keenfall::benchmarks
