#include "cli/ruled_table.h"

#include "base/require.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <sstream>

namespace keenfall::cli {

namespace {

constexpr int kGap = 2;
constexpr int kNarrowestName = 24;
constexpr int kWidestName = 32;

bool spans_all(const std::vector<std::string>& row) { return row.size() == 1; }

std::vector<int> needed_columns(const RuledTable& table, const Look& look) {
  std::vector<int> widths;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    int width = columns_of(shown_as(table.columns[i].head, look));
    for (const auto& row : table.rows) {
      if (!spans_all(row)) width = std::max(width, columns_of(shown_as(row[i], look)));
    }
    widths.push_back(width);
  }
  widths.front() = std::min(widths.front(), kWidestName);
  return widths;
}

int total_of(const std::vector<int>& widths, const std::vector<std::size_t>& shown) {
  int total = -kGap;
  for (const std::size_t i : shown) total += widths[i] + kGap;
  return total;
}

// Takes columns away, the least missed first, until the rest fits with the names shortened.
std::vector<std::size_t> columns_that_fit(const RuledTable& table,
                                          const std::vector<int>& widths,
                                          int width) {
  std::vector<std::size_t> shown(table.columns.size());
  std::iota(shown.begin(), shown.end(), std::size_t{0});
  const int spare = std::max(0, widths.front() - kNarrowestName);
  const auto first_to_go = [&table](std::size_t left, std::size_t right) {
    const int l = table.columns[left].drop_order;
    const int r = table.columns[right].drop_order;
    return l != 0 && (r == 0 || l < r);
  };
  while (total_of(widths, shown) - spare > width) {
    const auto least_missed = std::ranges::min_element(shown, first_to_go);
    if (table.columns[*least_missed].drop_order == 0) break;
    shown.erase(least_missed);
  }
  return shown;
}

std::string without_trailing_spaces(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line + "\n";
}

}  // namespace

// The lines of a name, as wide as its column: a later line stands in a little.
std::vector<std::string> lines_of_name(const std::string& name, int width, const Look& look) {
  constexpr int kStandsIn = 2;
  Look narrow = look;
  narrow.width = width;
  std::istringstream text(wrapped(shown_as(name, look), {.rest = kStandsIn}, narrow));
  std::vector<std::string> lines;
  for (std::string line; std::getline(text, line);) lines.push_back(line);
  return lines;
}

LaidOutTable laid_out(const RuledTable& table, const Look& look) {
  base::require(!table.columns.empty(), "a table has at least one column");
  std::vector<int> widths = needed_columns(table, look);
  const std::vector<std::size_t> shown = columns_that_fit(table, widths, look.width);
  const int too_wide = total_of(widths, shown) - look.width;
  if (too_wide > 0) widths.front() = std::max(kNarrowestName, widths.front() - too_wide);

  LaidOutTable result;
  const auto line_of = [&](const auto& cell) {
    std::string line;
    for (const std::size_t i : shown) {
      if (i != shown.front()) line += std::string(kGap, ' ');
      // Names often differ at their end: they are shortened in the middle.
      const std::string text =
          i == 0 ? shortened_in_the_middle(cell(i), widths[i], look) : std::string(cell(i));
      line += fitted(text, widths[i], table.columns[i].side, look);
    }
    return without_trailing_spaces(line);
  };
  result.text += line_of([&](std::size_t i) { return table.columns[i].head; });
  const std::string stroke = look.unicode ? "─" : "-";
  for (int i = 0; i < total_of(widths, shown); ++i) result.text += stroke;
  result.text += "\n";
  for (const auto& row : table.rows) {
    if (spans_all(row)) {
      result.text += wrapped(shown_as(row.front(), look), {}, look);
    } else if (table.wraps_names) {
      const auto lines = lines_of_name(row.front(), widths.front(), look);
      result.text += line_of([&](std::size_t i) { return i == 0 ? lines.front() : row[i]; });
      for (std::size_t line = 1; line < lines.size(); ++line) {
        result.text += lines[line] + "\n";
      }
    } else {
      result.text += line_of([&](std::size_t i) { return row[i]; });
    }
  }
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (std::ranges::count(shown, i) == 0) result.left_out.push_back(table.columns[i].head);
  }
  return result;
}

}  // namespace keenfall::cli
