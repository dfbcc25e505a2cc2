#include "page/ratio_figures.h"

#include "base/plain_number.h"
#include "page/figure_words.h"
#include "telling/level_words.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <string>

namespace keenfall::page {

namespace {

using verdicts::Comparison;

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

// What thin and thick lines are: a pair alone in its medium has one interval.
std::string lines_key(const Comparison& first) {
  if (first.family_size == 1) return "Line: the 95 % interval.";
  return fmt::format(
      "Thin: the 95 % interval that holds for all {} pairs at once. Thick: for this pair by "
      "itself.",
      first.family_size);
}

// What filled and open marks are, of those that are there.
std::string tones_key(const MediumShown& shown, const std::vector<std::size_t>& pairs) {
  const auto settled = [&](std::size_t index) {
    return verdicts::is_settled(shown.judgement.comparisons[index].verdict);
  };
  if (std::ranges::all_of(pairs, settled)) return "Filled: an answer that holds.";
  if (std::ranges::none_of(pairs, settled)) return "Open: not settled.";
  return "Filled: an answer that holds; open: not settled.";
}

std::vector<std::size_t> arms_of(const MediumShown& shown, const std::vector<std::size_t>& pairs) {
  std::vector<std::size_t> arms;
  for (const std::size_t arm : shown.group.arms) {
    const bool is_drawn = std::ranges::any_of(pairs, [&](std::size_t index) {
      const Comparison& pair = shown.judgement.comparisons[index];
      return pair.a == arm || pair.b == arm;
    });
    if (is_drawn) arms.push_back(arm);
  }
  return arms;
}

std::string ratio_caption(const MediumShown& shown, const std::vector<std::size_t>& pairs) {
  const Comparison& first = shown.judgement.comparisons[pairs.front()];
  const std::string level = telling::level_words(shown.judgement, first.at);
  return fmt::format(
      "How many times as long one edge lasts as another{}{}. {} Shaded: less than the worth-it "
      "margin of {}, too little to act on. {}{}{}",
      shown.judgement.test ? "" : ", in " + shown.judgement.counted.many,
      level.empty() ? " to half keenness" : " " + level,
      lines_key(first),
      base::plain_number(shown.judgement.worth_it_margin),
      tones_key(shown, pairs),
      pairs.size() < shown.group.comparisons.size()
          ? " Drawn: each edge against the one that lasts longest; the table has every pair."
          : "",
      key_words(shown.names, arms_of(shown, pairs)));
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

// What marks the level that is compared, where it lies among those drawn (plots/lines.ts).
std::string compared_key(const MediumShown& shown, const Comparison& pair) {
  const auto levels = telling::levels_compared(shown.judgement, pair);
  if (!levels) return {};
  const auto [lower, upper] = std::minmax(levels->a, levels->b);
  const double first = pair.ratio_by_level.front().level;
  const double last = pair.ratio_by_level.back().level;
  if (upper < first || lower > last) return {};
  if (pair.at.what != verdicts::ComparedAt::common_reading) return " Upright: what is compared.";
  return fmt::format(" Upright band: where {} {} lies, from what each of them starts from.",
                     verdicts::asked_reading_text(pair.at.reading),
                     shown.judgement.unit);
}

std::string level_caption(const MediumShown& shown, const Comparison& pair) {
  const bool rises = shown.judgement.kind.keener_when == trials::KeenerWhen::lower;
  const auto beyond = [](const verdicts::RatioAtLevel& at) { return at.beyond_what_was_cut; };
  return fmt::format(
      "{}: how many times as long, by how blunt the edges are let become ({}). Band: 95 % interval "
      "of this pair by itself.{}{} Shaded: too little to act on.",
      pair_name(shown, pair),
      rises ? "the reading, in times its start" : "the reading, as a share of its start",
      std::ranges::any_of(pair.ratio_by_level, beyond) ? " Open: beyond what was cut." : "",
      compared_key(shown, pair));
}

Figure level_figure(const MediumShown& shown, std::size_t index) {
  const Comparison& pair = shown.judgement.comparisons[index];
  const double margin = shown.judgement.worth_it_margin;
  Figure figure{.kind = "levels",
                .judgement = shown.judgement_index,
                .medium = shown.group_index,
                .pairs = {index},
                .caption = level_caption(shown, pair)};
  figure.numbers = {.caption = pair_name(shown, pair) + ", by level",
                    .columns = {{.head = telling::levels_words(shown.judgement)},
                                {.head = "ratio"},
                                {.head = "95 % interval"}}};
  for (const verdicts::RatioAtLevel& at : pair.ratio_by_level) {
    figure.numbers.rows.push_back({.cells = {telling::level_label(shown.judgement, at.level),
                                             telling::ratio_text(at.ratio.median, margin),
                                             telling::ratio_text(at.ratio.lo95, margin) + " to " +
                                                 telling::ratio_text(at.ratio.hi95, margin)}});
  }
  const auto words_of = [&](const verdicts::RatioAtLevel& at) {
    return telling::ratio_text(at.ratio.median, margin) + " " +
           telling::when_at_level(shown.judgement, at.level);
  };
  figure.words =
      words_of(pair.ratio_by_level.front()) + ", " + words_of(pair.ratio_by_level.back()) + ".";
  return figure;
}

}  // namespace

std::vector<Figure> ratio_figures(const MediumShown& shown) {
  if (shown.group.comparisons.empty()) return {};
  const double margin = shown.judgement.worth_it_margin;
  Figure figure{.kind = "ratios",
                .judgement = shown.judgement_index,
                .medium = shown.group_index,
                .pairs = pairs_drawn(shown)};
  figure.caption = ratio_caption(shown, figure.pairs);
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
  return {figure};
}

std::vector<Figure> level_figures(const MediumShown& shown) {
  std::vector<Figure> figures;
  std::size_t left_out = 0;
  for (const std::size_t index : shown.group.comparisons) {
    if (!changes_with_level(shown.judgement.comparisons[index])) continue;
    if (figures.size() == kMostLevelFigures) {
      ++left_out;
    } else {
      figures.push_back(level_figure(shown, index));
    }
  }
  if (left_out > 0) {
    figures.back().words += fmt::format(
        " {} more pairs change with the level and are not drawn; the report's JSON has them.",
        left_out);
  }
  return figures;
}

}  // namespace keenfall::page
