#include "cli/interval_drawing.h"

#include "base/plain_number.h"
#include "cli/log_axis.h"
#include "cli/text_layout.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <string_view>
#include <vector>

namespace keenfall::cli {

namespace {

using verdicts::Comparison;
using verdicts::Judgement;

constexpr int kRatioColumns = 7;
constexpr int kWidestLabel = 28;

struct Marks {
  std::string_view band;   // inside the worth-it margin
  std::string_view one;    // no longer, no shorter
  std::string_view joint;  // the interval that holds for all comparisons at once
  std::string_view alone;  // the interval of this comparison by itself
  std::string_view median;
  std::string_view off_left;
  std::string_view off_right;
};

constexpr Marks kUnicodeMarks = {"░", "┊", "─", "━", "●", "◂", "▸"};
constexpr Marks kAsciiMarks = {".", "|", "-", "=", "o", "<", ">"};

const Marks& marks_for(const Look& look) { return look.unicode ? kUnicodeMarks : kAsciiMarks; }

std::string pair_words(const Comparison& comparison, const std::vector<telling::ArmName>& names) {
  return names[comparison.a].label + " against " + names[comparison.b].label;
}

// From a little left of everything to a little right of it, within 1/100 to 100.
LogAxis axis_for(const Judgement& judgement, int cells) {
  constexpr double kFurthest = 100;
  constexpr double kAir = 1.15;
  LogAxis axis{
      .low = 1 / judgement.worth_it_margin, .high = judgement.worth_it_margin, .cells = cells};
  for (const Comparison& comparison : judgement.comparisons) {
    axis.low = std::min({axis.low, comparison.simultaneous.lo95, comparison.ratio.lo95});
    axis.high = std::max({axis.high, comparison.simultaneous.hi95, comparison.ratio.hi95});
  }
  axis.low = std::max(axis.low / kAir, 1 / kFurthest);
  axis.high = std::min(axis.high * kAir, kFurthest);
  return axis;
}

class Strip {
 public:
  explicit Strip(const LogAxis& axis)
      : axis_(axis), cells_(static_cast<std::size_t>(axis.cells), " ") {}

  void mark(double number, std::string_view with) {
    const int cell = axis_.cell_of(number);
    if (cell >= 0 && cell < axis_.cells) cells_[static_cast<std::size_t>(cell)] = with;
  }

  void mark_from(double low, double high, std::string_view with) {
    const int last = std::min(axis_.cell_of(high), axis_.cells - 1);
    for (int cell = std::max(axis_.cell_of(low), 0); cell <= last; ++cell) {
      cells_[static_cast<std::size_t>(cell)] = with;
    }
  }

  void mark_where_it_leaves(double low, double high, const Marks& marks) {
    if (low < axis_.low) cells_.front() = marks.off_left;
    if (high > axis_.high) cells_.back() = marks.off_right;
  }

  [[nodiscard]] std::string text() const {
    std::string text;
    for (const std::string& cell : cells_) text += cell;
    return text;
  }

 private:
  LogAxis axis_;
  std::vector<std::string> cells_;
};

std::string strip_of(const Judgement& judgement,
                     const Comparison& comparison,
                     const LogAxis& axis,
                     const Look& look) {
  const Marks& marks = marks_for(look);
  const verdicts::RatioBounds& joint = comparison.simultaneous;
  Strip strip(axis);
  strip.mark_from(1 / judgement.worth_it_margin, judgement.worth_it_margin, marks.band);
  strip.mark(1, marks.one);
  strip.mark_from(joint.lo95, joint.hi95, marks.joint);
  strip.mark_from(comparison.ratio.lo95, comparison.ratio.hi95, marks.alone);
  strip.mark(comparison.ratio.median, marks.median);
  strip.mark_where_it_leaves(joint.lo95, joint.hi95, marks);
  return strip.text();
}

std::string tick_line(const LogAxis& axis) {
  std::string line(static_cast<std::size_t>(axis.cells), ' ');
  int free_from = 0;
  for (const double tick : ticks_on(axis)) {
    const std::string label = tick_text(tick);
    const int length = static_cast<int>(label.size());
    const int begin = std::clamp(axis.cell_of(tick) - length / 2, 0, axis.cells - length);
    if (begin < free_from) continue;
    line.replace(static_cast<std::size_t>(begin), label.size(), label);
    free_from = begin + length + 1;
  }
  return line.substr(0, line.find_last_not_of(' ') + 1);
}

int label_columns_for(const Judgement& judgement,
                      const std::vector<telling::ArmName>& names,
                      const Look& look) {
  int columns = 0;
  for (const Comparison& comparison : judgement.comparisons) {
    columns = std::max(columns, columns_of(shown_as(pair_words(comparison, names), look)));
  }
  return std::min(columns, kWidestLabel) + 2;
}

std::string caption(const Judgement& judgement, const Look& look) {
  const Marks& marks = marks_for(look);
  const bool has_families = std::ranges::any_of(
      judgement.comparisons, [](const Comparison& each) { return each.family_size > 1; });
  const std::string intervals =
      has_families ? fmt::format(
                         "{} 95 % interval of the pair by itself, {} of all pairs of the "
                         "medium at once",
                         marks.alone,
                         marks.joint)
                   : fmt::format("{} 95 % interval", marks.alone);
  return wrapped(
      fmt::format("How many times as long: {}, {} inside the worth-it margin {}, {} equal.",
                  intervals,
                  marks.band,
                  base::plain_number(judgement.worth_it_margin),
                  marks.one),
      {},
      look);
}

// What the numbers stand for that arms go by where their names are long.
std::string key_text(const std::vector<telling::ArmName>& names, const Look& look) {
  if (!telling::labels_need_a_key(names)) return {};
  constexpr std::size_t kMostInKey = 6;
  std::vector<std::string> lines;
  for (const telling::ArmName& arm : names) {
    const std::string line = arm.label + ": " + shown_as(arm.name, look);
    if (std::ranges::count(lines, line) == 0) lines.push_back(line);
  }
  if (lines.size() > kMostInKey) return wrapped("The numbers are those of the table.", {}, look);
  std::string text;
  for (const std::string& line : lines) text += wrapped(line, {.first = 2, .rest = 5}, look);
  return text;
}

}  // namespace

std::string ratios_drawn(const Judgement& judgement, const Look& look) {
  if (judgement.comparisons.empty()) return {};
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  const int label_columns = label_columns_for(judgement, names, look);
  const LogAxis axis = axis_for(judgement, look.width - label_columns - 2 - kRatioColumns);
  std::string text = caption(judgement, look) + key_text(names, look);
  std::size_t left_out = 0;
  for (const telling::ArmGroup& group : telling::groups_of(judgement)) {
    if (group.comparisons.empty()) continue;
    text += wrapped("On " + shown_as(group.medium_words, look), {}, look);
    const std::size_t rows = std::min(group.comparisons.size(), kMostRatioRows);
    left_out += group.comparisons.size() - rows;
    for (std::size_t row = 0; row < rows; ++row) {
      const Comparison& comparison = judgement.comparisons[group.comparisons[row]];
      const std::string strip = strip_of(judgement, comparison, axis, look);
      const std::string shown =
          is_settled(comparison.verdict) ? as_settled(strip, look) : as_not_settled(strip, look);
      text += "  " + fitted(pair_words(comparison, names), label_columns - 2, Side::left, look) +
              "  " + shown +
              fitted(telling::ratio_text(comparison.ratio.median, judgement.worth_it_margin),
                     kRatioColumns,
                     Side::right,
                     look) +
              "\n";
    }
  }
  text += std::string(static_cast<std::size_t>(label_columns + 2), ' ') + tick_line(axis) + "\n";
  if (left_out > 0) {
    text += wrapped(
        fmt::format("{} more pairs are not drawn; --json holds them all.", left_out), {}, look);
  }
  return text;
}

}  // namespace keenfall::cli
