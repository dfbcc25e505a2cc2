#include "page/figures_of_medium.h"

#include "base/begun_large.h"
#include "base/plain_number.h"
#include "page/figure_words.h"
#include "telling/cuts_compared.h"
#include "telling/lasting.h"
#include "telling/level_words.h"
#include "telling/rounded.h"

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
using verdicts::Comparison;
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

// "14", "2.41": three figures, so that cuts beside each other differ.
std::string place_text(double cuts) {
  return base::plain_number(std::stod(base::with_figures(cuts, 3)));
}

// Empty where the curve has no such point.
std::string reading_at(const std::vector<CurvePoint>& curve, double cuts) {
  const auto point = std::ranges::find(curve, cuts, &CurvePoint::cuts);
  if (point == curve.end()) return {};
  const std::string words = interval_words(point->reading, reading_text);
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
    telling::Row row{.cells = {place_text(cuts)}};
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
  return words + fmt::format(" and{} {} after {} {}{}",
                             reached.beyond_what_was_cut ? ", by the curve, would have" : " has",
                             telling::level_reached_words(shown.judgement, at),
                             cuts_text(reached.cuts.median),
                             shown.judgement.counted.many,
                             reached.beyond_what_was_cut ? ", beyond what was cut" : "");
}

// What marks the level at which the edges are compared.
std::string level_key(const MediumShown& shown) {
  const verdicts::At at = telling::compared_at(shown.judgement, shown.group);
  const std::string dotted = at.what == verdicts::ComparedAt::common_reading
                                 ? "Dotted: the reading at which edges are compared. "
                                 : "";
  return fmt::format(
      "{}Rings: where it has {}.", dotted, telling::level_reached_words(shown.judgement, at));
}

void add_curves(std::vector<Figure>& figures, const MediumShown& shown) {
  const std::vector<std::size_t> arms = arms_with_curves(shown);
  if (arms.empty()) return;
  Figure figure = begun(shown, "curves");
  const bool rises = shown.judgement.kind.keener_when == trials::KeenerWhen::lower;
  constexpr std::size_t kMostBands = 4;  // more would hide each other (plots/curves.ts)
  figure.caption = fmt::format(
      "{} over the {}; {} is keener. Dots: readings. Thin: each run, through its checkpoints. "
      "Bold: "
      "each edge{}. {} Crosses: struck out. Triangles: something happened. Shaded: beyond what was "
      "cut.",
      base::begun_large(unit_of_readings(shown)),
      shown.judgement.counted.many,
      rises ? "lower" : "higher",
      arms.size() <= kMostBands ? " with its 95 % band" : "",
      level_key(shown));
  constexpr std::size_t kMostInOneFrame =
      6;  // more get a frame each, with its name (plots/look.ts)
  if (arms.size() <= kMostInOneFrame) figure.caption += key_words(shown.names, arms);
  std::vector<std::string> sentences;
  for (const std::size_t arm : arms) sentences.push_back(curve_sentence(shown, arm));
  figure.words = some_of(sentences);
  figure.numbers = curve_numbers(shown, arms);
  figures.push_back(std::move(figure));
}

// All of few; of many, each edge against the one that lasts longest.
std::vector<std::size_t> pairs_drawn(const MediumShown& shown) {
  const std::vector<std::size_t>& all = shown.group.comparisons;
  if (all.size() <= kMostPairsDrawn) return all;
  std::size_t longest = shown.judgement.comparisons[all.front()].a;
  for (const std::size_t index : all) {
    const Comparison& pair = shown.judgement.comparisons[index];
    if (pair.b == longest) longest = pair.a;
  }
  std::vector<std::size_t> pairs;
  std::ranges::copy_if(all, std::back_inserter(pairs), [&](std::size_t index) {
    const Comparison& pair = shown.judgement.comparisons[index];
    return pair.a == longest || pair.b == longest;
  });
  return pairs;
}

std::string pair_name(const MediumShown& shown, const Comparison& pair) {
  return shown.names[pair.a].name + " over " + shown.names[pair.b].name;
}

telling::Table ratio_numbers(const MediumShown& shown) {
  const double margin = shown.judgement.worth_it_margin;
  const auto ratio = [margin](double number) { return telling::ratio_text(number, margin); };
  const std::string margin_text = base::plain_number(margin);
  telling::Table table{.caption = "How many times as long the first of two edges lasts",
                       .columns = {{.head = "edges", .side = telling::Side::left},
                                   {.head = "ratio"},
                                   {.head = "95 % interval, all at once"},
                                   {.head = "90 %, all at once"},
                                   {.head = "95 %, taken by itself"},
                                   {.head = "chance that it lasts longer"},
                                   {.head = "chance of " + margin_text + " or more"},
                                   {.head = "verdict", .side = telling::Side::left}}};
  for (const std::size_t index : shown.group.comparisons) {
    const Comparison& pair = shown.judgement.comparisons[index];
    table.rows.push_back(
        {.cells = {pair_name(shown, pair),
                   ratio(pair.ratio.median),
                   ratio(pair.simultaneous.lo95) + " to " + ratio(pair.simultaneous.hi95),
                   ratio(pair.simultaneous.lo90) + " to " + ratio(pair.simultaneous.hi90),
                   ratio(pair.ratio.lo95) + " to " + ratio(pair.ratio.hi95),
                   telling::chance_text(pair.probability_longer),
                   telling::chance_text(pair.probability_worth_having),
                   std::string(verdicts::in_words(pair.verdict))}});
  }
  return table;
}

void add_ratios(std::vector<Figure>& figures, const MediumShown& shown) {
  if (shown.group.comparisons.empty()) return;
  Figure figure = begun(shown, "ratios");
  figure.pairs = pairs_drawn(shown);
  const double margin = shown.judgement.worth_it_margin;
  const Comparison& first = shown.judgement.comparisons[figure.pairs.front()];
  const std::string level = telling::level_words(shown.judgement, first.at);
  figure.caption = fmt::format(
      "How many times as long one edge lasts as another{}{}. Thin: the 95 % interval that holds "
      "for "
      "all {} at once. Thick: for this pair by itself. Shaded: less than the worth-it margin of "
      "{}, "
      "too little to act on. Filled: an answer that holds; open: not settled.{}",
      shown.judgement.test ? "" : ", in " + shown.judgement.counted.many,
      level.empty() ? " to half keenness" : " " + level,
      first.family_size == 1 ? "pairs" : fmt::format("{} pairs", first.family_size),
      base::plain_number(margin),
      figure.pairs.size() < shown.group.comparisons.size()
          ? " Drawn: each edge against the one that lasts longest; the table has every pair."
          : "");
  std::vector<std::string> sentences;
  for (const std::size_t index : figure.pairs) {
    const Comparison& pair = shown.judgement.comparisons[index];
    sentences.push_back(fmt::format("{} {} ({} to {}), {}",
                                    pair_name(shown, pair),
                                    telling::ratio_text(pair.ratio.median, margin),
                                    telling::ratio_text(pair.simultaneous.lo95, margin),
                                    telling::ratio_text(pair.simultaneous.hi95, margin),
                                    verdicts::in_words(pair.verdict)));
  }
  figure.words = some_of(sentences);
  figure.numbers = ratio_numbers(shown);
  figures.push_back(std::move(figure));
}

// How runs are drawn of which only an end of what they lasted is known.
std::string runs_key(const MediumShown& shown) {
  const auto tested = [&](std::size_t arm) { return arm_at(shown, arm).test.has_value(); };
  std::string words;
  if (std::ranges::any_of(shown.group.arms, tested)) {
    words += ", those tested from the last time each still passed to the first it failed";
  }
  return words +
         "; an arrow where only one end is known: on from there, at least so long; back "
         "from there, at most";
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

void add_starts(std::vector<Figure>& figures, const MediumShown& shown) {
  Figure figure = begun(shown, "starts");
  const std::string unit = shown.judgement.unit;
  figure.caption = fmt::format(
      "Where every run started: {} before the first of the {}, the mean of its readings. Dot and "
      "line: what the edge typically starts from, with its 95 % interval. Crosses: runs not used.",
      unit_of_readings(shown),
      shown.judgement.counted.many);
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

// The ratio of a pair whose shapes differ changes with the level; one that hardly changes is not
// drawn.
bool changes_with_level(const Comparison& pair) {
  constexpr double kWorthDrawing = 1.15;
  if (pair.ratio_by_level.size() < 2) return false;
  const auto [low, high] = std::ranges::minmax_element(
      pair.ratio_by_level, {}, [](const auto& at) { return at.ratio.median; });
  return high->ratio.median / low->ratio.median > kWorthDrawing;
}

void add_level_figure(std::vector<Figure>& figures, const MediumShown& shown, std::size_t index) {
  const Comparison& pair = shown.judgement.comparisons[index];
  const double margin = shown.judgement.worth_it_margin;
  const bool rises = shown.judgement.kind.keener_when == trials::KeenerWhen::lower;
  Figure figure = begun(shown, "levels");
  figure.pairs = {index};
  figure.caption = fmt::format(
      "{}: how many times as long, by how blunt the edges are let become ({}). Band: 95 % interval "
      "of this pair by itself. Open: beyond what was cut. Shaded: too little to act on.",
      pair_name(shown, pair),
      rises ? "the reading, in times its start" : "the start, in times the reading");
  figure.numbers = {.caption = pair_name(shown, pair) + ", by level",
                    .columns = {{.head = "level"}, {.head = "ratio"}, {.head = "95 % interval"}}};
  for (const verdicts::RatioAtLevel& at : pair.ratio_by_level) {
    figure.numbers.rows.push_back({.cells = {base::plain_number(at.level),
                                             telling::ratio_text(at.ratio.median, margin),
                                             telling::ratio_text(at.ratio.lo95, margin) + " to " +
                                                 telling::ratio_text(at.ratio.hi95, margin)}});
  }
  const auto& first = pair.ratio_by_level.front();
  const auto& last = pair.ratio_by_level.back();
  figure.words = fmt::format("{} at {} times the start, {} at {} times.",
                             telling::ratio_text(first.ratio.median, margin),
                             base::plain_number(first.level),
                             telling::ratio_text(last.ratio.median, margin),
                             base::plain_number(last.level));
  figures.push_back(std::move(figure));
}

void add_levels(std::vector<Figure>& figures, const MediumShown& shown) {
  constexpr std::size_t kMostDrawn = 6;
  std::size_t drawn = 0;
  for (const std::size_t index : shown.group.comparisons) {
    if (drawn == kMostDrawn) return;
    if (!changes_with_level(shown.judgement.comparisons[index])) continue;
    add_level_figure(figures, shown, index);
    ++drawn;
  }
}

}  // namespace

std::vector<Figure> figures_of(const MediumShown& shown) {
  std::vector<Figure> figures;
  add_curves(figures, shown);
  add_ratios(figures, shown);
  add_lasting(figures, shown);
  add_levels(figures, shown);
  add_starts(figures, shown);
  return figures;
}

}  // namespace keenfall::page
