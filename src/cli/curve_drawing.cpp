#include "cli/curve_drawing.h"

#include "cli/dot_canvas.h"
#include "cli/log_axis.h"
#include "cli/text_layout.h"
#include "telling/arm_groups.h"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <vector>

namespace keenfall::cli {

namespace {

using verdicts::ArmResult;
using verdicts::CurvePoint;
using verdicts::Judgement;

constexpr int kRows = 14;
constexpr int kAxisColumns = 8;   // room for the readings at the left
constexpr int kLabelColumns = 4;  // room for the labels at the right

struct Dashes {
  int on = 1;
  int off = 0;
};
constexpr std::array<Dashes, 4> kDashes = {{{1, 0}, {7, 3}, {3, 2}, {12, 2}}};
constexpr Dashes kBeyondWhatWasCut = {1, 5};

bool can_be_drawn(const CurvePoint& point) { return point.cuts > 0 && point.reading.median > 0; }

std::vector<std::size_t> arms_drawn(const Judgement& judgement, const telling::ArmGroup& group) {
  std::vector<std::size_t> arms;
  for (const std::size_t arm : group.arms) {
    const verdicts::ArmResult& result = judgement.arms[arm];
    if (!result.half_keenness) continue;
    if (std::ranges::count_if(result.curve, can_be_drawn) >= 2) arms.push_back(arm);
  }
  std::ranges::stable_sort(arms, [&judgement](std::size_t left, std::size_t right) {
    return judgement.arms[left].half_keenness->cuts.median >
           judgement.arms[right].half_keenness->cuts.median;
  });
  if (arms.size() > kMostCurves) {
    std::vector<std::size_t> spread;
    for (std::size_t i = 0; i < kMostCurves; ++i) {
      spread.push_back(arms[i * (arms.size() - 1) / (kMostCurves - 1)]);
    }
    arms = spread;
  }
  std::ranges::sort(arms);
  return arms;
}

struct Axes {
  LogAxis cuts;
  LogAxis readings;
};

Axes axes_for(const Judgement& judgement, const std::vector<std::size_t>& arms) {
  constexpr double kAir = 1.05;
  Axes axes{.cuts = {.low = HUGE_VAL, .high = 0}, .readings = {.low = HUGE_VAL, .high = 0}};
  const auto take_in = [](LogAxis& axis, double number) {
    axis.low = std::min(axis.low, number);
    axis.high = std::max(axis.high, number);
  };
  for (const std::size_t arm : arms) {
    for (const CurvePoint& point : judgement.arms[arm].curve) {
      if (!can_be_drawn(point)) continue;
      take_in(axes.cuts, point.cuts);
      take_in(axes.readings, point.reading.median);
    }
  }
  axes.readings.low /= kAir;
  axes.readings.high *= kAir;
  if (axes.cuts.high <= axes.cuts.low) axes.cuts.high = 2 * axes.cuts.low;
  return axes;
}

// The reading between two points of a curve, straight on the log axes.
double reading_at(const CurvePoint& left, const CurvePoint& right, double cuts) {
  const double share = std::log(cuts / left.cuts) / std::log(right.cuts / left.cuts);
  return left.reading.median * std::pow(right.reading.median / left.reading.median, share);
}

struct TracePoint {
  int down = 0;
  int across = 0;
  bool beyond_what_was_cut = false;
};

// One point for each column of dots that the curve crosses.
std::vector<TracePoint> trace_of(const ArmResult& arm, const Axes& axes) {
  std::vector<CurvePoint> points;
  std::ranges::copy_if(arm.curve, std::back_inserter(points), can_be_drawn);
  std::vector<TracePoint> trace;
  std::size_t segment = 0;
  constexpr double kRounding = 1e-9;
  for (int across = 0; across < axes.cuts.cells; ++across) {
    const double share = across / (axes.cuts.cells - 1.0);
    const double cuts = axes.cuts.low * std::pow(axes.cuts.high / axes.cuts.low, share);
    if (cuts < points.front().cuts * (1 - kRounding)) continue;
    if (cuts > points.back().cuts * (1 + kRounding)) break;
    while (segment + 2 < points.size() && points[segment + 1].cuts < cuts) ++segment;
    const double reading = reading_at(points[segment], points[segment + 1], cuts);
    trace.push_back({.down = axes.readings.cells - 1 - axes.readings.cell_of(reading),
                     .across = across,
                     .beyond_what_was_cut = points[segment + 1].beyond_what_was_cut});
  }
  return trace;
}

void paint(const std::vector<TracePoint>& trace, Dashes dashes, char mark, DotCanvas& canvas) {
  for (std::size_t i = 0; i < trace.size(); ++i) {
    const TracePoint& point = trace[i];
    const Dashes pattern = point.beyond_what_was_cut ? kBeyondWhatWasCut : dashes;
    const auto place = static_cast<int>(i) % (pattern.on + pattern.off);
    if (place >= pattern.on) continue;
    const bool joined = i > 0 && !point.beyond_what_was_cut;
    const int before = joined ? trace[i - 1].down : point.down;
    const int top = std::min(point.down, before + 1);
    const int bottom = std::max(point.down, before - 1);
    for (int down = top; down <= bottom; ++down) canvas.dot(point.across, down, mark);
  }
}

struct LabelAtEnd {
  int row = 0;
  int column = 0;
  std::string text;
};

// Labels of lines that end together are moved apart.
void write_labels(std::vector<LabelAtEnd> ends, DotCanvas& canvas) {
  std::ranges::stable_sort(ends, {}, &LabelAtEnd::row);
  int free_from = 0;
  for (std::size_t i = 0; i < ends.size(); ++i) {
    const int still_to_come = static_cast<int>(ends.size() - i) - 1;
    const int row = std::min(std::max(ends[i].row, free_from), kRows - 1 - still_to_come);
    canvas.write(ends[i].column, row, ends[i].text);
    free_from = row + 1;
  }
}

std::map<int, std::string> reading_labels(const LogAxis& readings) {
  std::map<int, std::string> labels;
  for (const double tick : ticks_on(readings)) {
    const LogAxis rows{.low = readings.low, .high = readings.high, .cells = kRows};
    labels.try_emplace(kRows - 1 - rows.cell_of(tick), tick_text(tick));
  }
  return labels;
}

std::string cuts_tick_line(const LogAxis& cuts, int columns) {
  const LogAxis axis{.low = cuts.low, .high = cuts.high, .cells = columns};
  std::string line(static_cast<std::size_t>(columns), ' ');
  int free_from = 0;
  for (const double tick : ticks_on(axis)) {
    const std::string label = tick_text(tick);
    const int length = static_cast<int>(label.size());
    const int begin = std::clamp(axis.cell_of(tick) - length / 2, 0, columns - length);
    if (begin < free_from) continue;
    line.replace(static_cast<std::size_t>(begin), label.size(), label);
    free_from = begin + length + 2;
  }
  return line.substr(0, line.find_last_not_of(' ') + 1);
}

char ascii_mark_of(const std::string& label) {
  const char last = label.empty() ? '*' : label.back();
  return static_cast<unsigned char>(last) < 0x80U ? last : '*';
}

std::string panel(const Judgement& judgement,
                  const std::vector<std::size_t>& arms,
                  const std::vector<telling::ArmName>& names,
                  const Look& look) {
  const int columns = look.width - kAxisColumns - 1;
  DotCanvas canvas(columns, kRows, look);
  Axes axes = axes_for(judgement, arms);
  const int dots_per_column = canvas.dots_across() / columns;
  axes.cuts.cells = canvas.dots_across() - kLabelColumns * dots_per_column;
  axes.readings.cells = canvas.dots_down();
  std::vector<LabelAtEnd> ends;
  for (std::size_t i = 0; i < arms.size(); ++i) {
    const std::string label = shown_as(names[arms[i]].label, look);
    const std::vector<TracePoint> trace = trace_of(judgement.arms[arms[i]], axes);
    if (trace.empty()) continue;
    paint(trace, kDashes[i % kDashes.size()], ascii_mark_of(label), canvas);
    ends.push_back({.row = trace.back().down * kRows / canvas.dots_down(),
                    .column = trace.back().across / dots_per_column + 2,
                    .text = label});
  }
  write_labels(ends, canvas);
  const auto ticks = reading_labels(axes.readings);
  const std::string wall = look.unicode ? "│" : "|";
  const std::vector<std::string> rows = canvas.rows();
  std::string text;
  for (int row = 0; row < kRows; ++row) {
    const auto tick = ticks.find(row);
    std::string line =
        fitted(tick == ticks.end() ? "" : tick->second, kAxisColumns - 1, Side::right, look);
    line += " " + wall + rows[static_cast<std::size_t>(row)];
    text += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
  }
  const std::string corner = look.unicode ? "└" : "+";
  const std::string floor = look.unicode ? "─" : "-";
  text += std::string(kAxisColumns, ' ') + corner;
  for (int i = 0; i < columns; ++i) text += floor;
  text += "\n" + std::string(kAxisColumns + 1, ' ') +
          cuts_tick_line(axes.cuts, columns - kLabelColumns) + "\n";
  return text;
}

std::string heading(const Judgement& judgement,
                    const telling::ArmGroup& group,
                    std::size_t drawn,
                    const Look& look) {
  const bool lower = judgement.kind.keener_when == trials::KeenerWhen::lower;
  std::string words = fmt::format("On {}: {}, {}, against {} ({} is keener).",
                                  group.medium_words,
                                  judgement.kind.words,
                                  judgement.unit,
                                  judgement.counted.many,
                                  lower ? "lower" : "higher");
  if (drawn < group.arms.size()) {
    words += fmt::format(
        " {} of {}, from the longest- to the shortest-lasting.", drawn, group.arms.size());
  }
  return wrapped(shown_as(words, look), {}, look);
}

}  // namespace

std::string curves_drawn(const Judgement& judgement, const Look& look) {
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  std::string text;
  std::size_t panels = 0;
  for (const telling::ArmGroup& group : telling::groups_of(judgement)) {
    const std::vector<std::size_t> arms = arms_drawn(judgement, group);
    if (arms.empty()) continue;
    if (++panels > kMostPanels) continue;
    if (panels > 1) text += "\n";
    text += heading(judgement, group, arms.size(), look) + panel(judgement, arms, names, look);
  }
  if (panels > kMostPanels) {
    text += wrapped(fmt::format("{} more media are not drawn; --json holds their curves.",
                                panels - kMostPanels),
                    {},
                    look);
  }
  if (panels > 0) text += wrapped("Both axes by ratio. Sparse dots: past what was cut.", {}, look);
  return text;
}

}  // namespace keenfall::cli
