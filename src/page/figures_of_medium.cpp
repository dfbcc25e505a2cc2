#include "page/figures_of_medium.h"

#include "base/begun_large.h"
#include "base/plain_number.h"
#include "page/curves_drawn.h"
#include "page/figure_words.h"
#include "page/ratio_figures.h"
#include "telling/cuts_compared.h"
#include "telling/lasting.h"
#include "telling/level_words.h"
#include "telling/picture_words.h"
#include "telling/rounded.h"
#include "telling/run_lasting.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <set>
#include <string>

namespace keenfall::page {

namespace {

using telling::cuts_text;
using telling::reading_text;
using verdicts::ArmResult;
using verdicts::CurvePoint;

const ArmResult& arm_at(const MediumShown& shown, std::size_t arm) {
  return shown.judgement.arms[arm];
}

Figure begun(const MediumShown& shown, std::string kind) {
  return {.kind = std::move(kind), .judgement = shown.judgement_index, .medium = shown.group_index};
}

std::string unit_of_readings(const MediumShown& shown) {
  return fmt::format("{} ({})", shown.judgement.kind.words, shown.judgement.unit);
}

// Every count of cuts that a curve is given at: those of edges cut to different lengths differ.
std::vector<double> places_of(const MediumShown& shown, const std::vector<std::size_t>& arms) {
  std::set<double> places;
  for (const std::size_t arm : arms) {
    for (const CurvePoint& point : arm_at(shown, arm).curve) places.insert(point.cuts);
  }
  return {places.begin(), places.end()};
}

// Empty where the curve has no such point.
std::string reading_at(const std::vector<CurvePoint>& curve, double cuts) {
  const auto point = std::ranges::find(curve, cuts, &CurvePoint::cuts);
  if (point == curve.end()) return {};
  const std::string words = telling::interval_text(point->reading, reading_text);
  return point->beyond_what_was_cut ? "[" + words + "]" : words;
}

telling::Table curve_numbers(const MediumShown& shown, const std::vector<std::size_t>& arms) {
  telling::Table table{
      .caption = fmt::format("{} by the curves, with 95 % intervals; in brackets: beyond what was "
                             "cut; empty: beyond what the curve is carried to",
                             unit_of_readings(shown)),
      .columns = {{.head = shown.judgement.counted.many}}};
  for (const std::size_t arm : arms) table.columns.push_back({.head = shown.names[arm].name});
  for (const double cuts : places_of(shown, arms)) {
    telling::Row row{.cells = {telling::place_text(cuts)}};
    for (const std::size_t arm : arms) {
      row.cells.push_back(reading_at(arm_at(shown, arm).curve, cuts));
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

std::vector<std::size_t> arms_with_curves(const MediumShown& shown) {
  std::vector<std::size_t> arms;
  std::ranges::copy_if(shown.group.arms, std::back_inserter(arms), [&](std::size_t arm) {
    return !arm_at(shown, arm).curve.empty();
  });
  return arms;
}

std::string curve_sentence(const MediumShown& shown, std::size_t arm) {
  const ArmResult& result = arm_at(shown, arm);
  std::string words = shown.names[arm].name;
  if (result.start_reading) {
    words += fmt::format(
        " starts at {} {}", reading_text(result.start_reading->median), shown.judgement.unit);
  }
  const verdicts::At at = telling::compared_at(shown.judgement, shown.group);
  if (!telling::cuts_are_known(shown.judgement, result, at)) return words;
  const verdicts::CutsToLevel& reached = telling::cuts_compared(result, at);
  if (const auto least = reached.at_least()) {
    return words + fmt::format(" and has {} after at least {} {}: no run got there",
                               telling::level_reached_words(shown.judgement, at),
                               cuts_text(*least),
                               shown.judgement.counted.many);
  }
  return words + fmt::format(" and{} {} after {} {}{}",
                             reached.beyond_what_was_cut ? ", by the curve, would have" : " has",
                             telling::level_reached_words(shown.judgement, at),
                             cuts_text(reached.cuts.median),
                             shown.judgement.counted.many,
                             reached.beyond_what_was_cut ? ", beyond what was cut" : "");
}

void add_curves(std::vector<Figure>& figures, const MediumShown& shown) {
  const std::vector<std::size_t> arms = arms_with_curves(shown);
  if (arms.empty()) return;
  Figure figure = begun(shown, "curves");
  const bool rises = shown.judgement.kind.keener_when == trials::KeenerWhen::lower;
  const CurvesDrawn drawn = curves_drawn(shown, arms);
  figure.form = form_of(drawn);
  figure.caption = fmt::format("{} over the {}; {} is keener. {}",
                               base::begun_large(unit_of_readings(shown)),
                               shown.judgement.counted.many,
                               rises ? "lower" : "higher",
                               curves_key(shown, drawn));
  if (!drawn.frame_each) figure.caption += key_words(shown.names, arms);
  std::vector<std::string> sentences;
  for (const std::size_t arm : arms) sentences.push_back(curve_sentence(shown, arm));
  figure.words = some_of(sentences);
  figure.numbers = curve_numbers(shown, arms);
  figures.push_back(std::move(figure));
}

// How runs are drawn of which only an end of what they lasted is known, where there are such.
std::string runs_key(const MediumShown& shown) {
  using telling::RunKnown;
  std::set<RunKnown> known;
  for (const verdicts::RunResult& run : shown.judgement.runs) {
    if (std::ranges::count(shown.group.arms, run.arm) == 0) continue;
    if (const auto lasting = telling::run_lasting(run)) known.insert(lasting->known);
  }
  std::string words;
  if (known.contains(RunKnown::between)) {
    words += ", those tested from the last time each still passed to the first it failed";
  }
  if (known.contains(RunKnown::at_least)) words += "; an arrow on from there: at least so long";
  if (known.contains(RunKnown::at_most)) words += "; an arrow back from there: at most so long";
  return words;
}

void add_lasting(std::vector<Figure>& figures, const MediumShown& shown) {
  const verdicts::At at = telling::compared_at(shown.judgement, shown.group);
  const std::string what = telling::lasting_words(shown.judgement, at);
  Figure figure = begun(shown, "lasting");
  figure.caption = fmt::format(
      "{}. Dot and line: each edge and its 95 % interval. Small: its runs, one by one{}.",
      base::begun_large(what),
      runs_key(shown));
  figure.numbers = {.caption = base::begun_large(what),
                    .columns = {{.head = "edge", .side = telling::Side::left},
                                {.head = what},
                                {.head = "95 % interval"},
                                {.head = "runs scatter by"},
                                {.head = "runs"},
                                {.head = "pieces"}}};
  std::vector<std::string> sentences;
  for (const std::size_t arm : shown.group.arms) {
    const ArmResult& result = arm_at(shown, arm);
    if (!telling::cuts_are_known(shown.judgement, result, at)) continue;
    const numerics::Interval& cuts = telling::cuts_compared(result, at).cuts;
    const std::string words = telling::cuts_in_words(shown.judgement, result, at);
    const std::string between = cuts_text(cuts.lo95) + " to " + cuts_text(cuts.hi95);
    sentences.push_back(
        fmt::format("{} {}, 95 % interval {}", shown.names[arm].name, words, between));
    figure.numbers.rows.push_back(
        {.cells = {shown.names[arm].name,
                   words,
                   between,
                   telling::scatter_text(result.run_scatter_log_sd.median),
                   std::to_string(result.runs),
                   std::to_string(result.specimens)}});
  }
  if (sentences.empty()) return;
  figure.words = some_of(sentences);
  figures.push_back(std::move(figure));
}

// What each run of the arm was read at before the first cut: "101 (run 1); 131 (run 2, not used)".
std::string starts_read(const MediumShown& shown, std::size_t arm) {
  std::string words;
  for (std::size_t i = 0; i < shown.runs.size(); ++i) {
    const verdicts::RunResult& run = shown.judgement.runs[i];
    const auto& read = shown.runs[i].checkpoints;
    if (run.arm != arm || read.empty() || read.front().cuts > 0) continue;
    if (read.front().reading <= 0) continue;  // below what could be read
    words += fmt::format("{}{} (run {}{})",
                         words.empty() ? "" : "; ",
                         reading_text(read.front().reading),
                         run.name,
                         run.not_used_because.empty() ? "" : ", not used");
  }
  return words;
}

// A run that is not used, and was read before the first cut.
bool has_unused_start(const MediumShown& shown) {
  for (std::size_t i = 0; i < shown.runs.size(); ++i) {
    const verdicts::RunResult& run = shown.judgement.runs[i];
    const auto& read = shown.runs[i].checkpoints;
    if (run.not_used_because.empty() || std::ranges::count(shown.group.arms, run.arm) == 0)
      continue;
    if (!read.empty() && read.front().cuts <= 0 && read.front().reading > 0) return true;
  }
  return false;
}

void add_starts(std::vector<Figure>& figures, const MediumShown& shown) {
  Figure figure = begun(shown, "starts");
  const std::string unit = shown.judgement.unit;
  figure.caption = fmt::format(
      "Where every run started: {} before the first of the {}, the mean of its readings. Dot and "
      "line: what the edge typically starts from, with its 95 % interval.{}",
      unit_of_readings(shown),
      shown.judgement.counted.many,
      has_unused_start(shown) ? " Crosses: runs not used." : "");
  figure.numbers = {.caption = "Typical start of each edge, " + unit,
                    .columns = {{.head = "edge", .side = telling::Side::left},
                                {.head = "start"},
                                {.head = "95 % interval"},
                                {.head = "its runs, as read", .side = telling::Side::left}}};
  std::vector<std::string> sentences;
  for (const std::size_t arm : shown.group.arms) {
    const auto& start = arm_at(shown, arm).start_reading;
    if (!start) continue;
    const std::string between = reading_text(start->lo95) + " to " + reading_text(start->hi95);
    sentences.push_back(fmt::format("{} starts from {} {} ({})",
                                    shown.names[arm].name,
                                    reading_text(start->median),
                                    unit,
                                    between));
    figure.numbers.rows.push_back({.cells = {shown.names[arm].name,
                                             reading_text(start->median),
                                             between,
                                             starts_read(shown, arm)}});
  }
  if (sentences.empty()) return;
  figure.words = some_of(sentences);
  figures.push_back(std::move(figure));
}

}  // namespace

std::vector<Figure> figures_of(const MediumShown& shown) {
  std::vector<Figure> figures;
  add_curves(figures, shown);
  std::ranges::move(ratio_figures(shown), std::back_inserter(figures));
  add_lasting(figures, shown);
  std::ranges::move(level_figures(shown), std::back_inserter(figures));
  add_starts(figures, shown);
  return figures;
}

}  // namespace keenfall::page
