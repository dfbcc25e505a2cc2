#include "page/figures_of_all.h"

#include "base/begun_large.h"
#include "base/plain_number.h"
#include "page/figure_words.h"
#include "telling/arm_groups.h"
#include "telling/cuts_compared.h"
#include "telling/cutting_order.h"
#include "telling/lasting.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <string>

namespace keenfall::page {

namespace {

using verdicts::Judgement;
using verdicts::RunResult;

struct RunInOrder {
  const RunResult* run = nullptr;
  int place = 0;
  double over_its_arm = 1;
};

// The name of the group, "new matting", that an arm belongs to.
std::string medium_of(const std::vector<telling::ArmGroup>& groups, std::size_t arm) {
  for (const telling::ArmGroup& group : groups) {
    if (std::ranges::count(group.arms, arm) > 0) return group.medium_words;
  }
  return {};
}

// Blocks are shaded by turns from the second on; a picture of one block's runs has none.
bool has_shaded_blocks(const telling::CuttingOrder& order, const std::vector<RunInOrder>& runs) {
  for (std::size_t i = 1; i < order.blocks.size(); i += 2) {
    const telling::BlockInOrder& block = order.blocks[i];
    if (block.first <= runs.back().place && block.last >= runs.front().place) return true;
  }
  return false;
}

std::string order_caption(const telling::CuttingOrder& order,
                          const std::vector<telling::ArmName>& names,
                          const std::vector<RunInOrder>& runs) {
  std::vector<std::size_t> arms;
  for (const RunInOrder& entry : runs) arms.push_back(entry.run->arm);
  std::ranges::sort(arms);
  return fmt::format(
      "Every run against its edge's typical one, in the order they were cut{}. A drift, or a block "
      "that lies apart, would show here.{}{}",
      order.begins_anew && !order.blocks.empty() ? ", block after block" : "",
      has_shaded_blocks(order, runs) ? " Shaded by turns: blocks." : "",
      key_words(names, arms));
}

}  // namespace

std::optional<Figure> media_figure(const Judgement& judgement, std::size_t judgement_index) {
  if (!judgement.media) return std::nullopt;
  const auto& media = judgement.media->media;
  const std::vector<telling::ArmGroup> groups = telling::groups_of(judgement);
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  const std::string what = telling::lasting_words(judgement, judgement.media->at);
  Figure figure{.kind = "media", .judgement = judgement_index};
  figure.caption = fmt::format(
      "{}, medium by medium: lines that run together close the gap between the edges, lines that "
      "cross change their order. Bars: 95 % intervals.",
      base::begun_large(what));
  figure.caption += key_words(names, media.front().arms);
  figure.numbers = {.caption = base::begun_large(what),
                    .columns = {{.head = "edge", .side = telling::Side::left}}};
  for (const auto& medium : media) {
    figure.numbers.columns.push_back({.head = medium_of(groups, medium.arms.front())});
  }
  std::vector<std::string> sentences;
  for (std::size_t blade = 0; blade < media.front().arms.size(); ++blade) {
    const std::string& name = names[media.front().arms[blade]].name;
    telling::Row row{.cells = {name}};
    std::string sentence = name + ":";
    for (const auto& medium : media) {
      const verdicts::ArmResult& arm = judgement.arms[medium.arms[blade]];
      const std::string words = telling::cuts_in_words(judgement, arm, medium.lasting.at(blade));
      sentence += fmt::format("{} {} on {}",
                              row.cells.size() == 1 ? "" : ",",
                              words,
                              medium_of(groups, medium.arms[blade]));
      row.cells.push_back(words);
    }
    sentences.push_back(std::move(sentence));
    figure.numbers.rows.push_back(std::move(row));
  }
  figure.words = some_of(sentences);
  return figure;
}

std::optional<Figure> factor_figure(const Judgement& judgement, std::size_t judgement_index) {
  if (!judgement.factors || judgement.factors->effects.empty()) return std::nullopt;
  const double margin = judgement.worth_it_margin;
  const auto ratio = [margin](double number) { return telling::ratio_text(number, margin); };
  Figure figure{.kind = "factors", .judgement = judgement_index};
  figure.caption = fmt::format(
      "What each factor does, averaged over the others: how many times as long edges last against "
      "the factor's first level. Thin: the 95 % interval that holds for all of these and their "
      "interactions at once; thick: by itself. Shaded: less than the worth-it margin of {}.",
      base::plain_number(margin));
  figure.numbers = {.caption = "Times as many " + judgement.counted.many,
                    .columns = {{.head = "factor", .side = telling::Side::left},
                                {.head = "level", .side = telling::Side::left},
                                {.head = "against", .side = telling::Side::left},
                                {.head = "ratio"},
                                {.head = "95 % interval, all at once"},
                                {.head = "verdict", .side = telling::Side::left}}};
  std::vector<std::string> sentences;
  for (const verdicts::FactorEffect& effect : judgement.factors->effects) {
    const verdicts::Factor& factor = judgement.factors->factors[effect.factor];
    const std::string between =
        ratio(effect.simultaneous.lo95) + " to " + ratio(effect.simultaneous.hi95);
    figure.numbers.rows.push_back({.cells = {factor.what,
                                             factor.levels[effect.level],
                                             factor.levels.front(),
                                             ratio(effect.ratio.median),
                                             between,
                                             std::string(verdicts::in_words(effect.verdict))}});
    sentences.push_back(fmt::format("{} {} against {}: {} ({})",
                                    factor.what,
                                    factor.levels[effect.level],
                                    factor.levels.front(),
                                    ratio(effect.ratio.median),
                                    between));
  }
  figure.words = some_of(sentences);
  return figure;
}

std::optional<Figure> order_figure(const telling::ReportedJudgement& reported,
                                   std::size_t judgement_index) {
  const Judgement& judgement = reported.judgement;
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  const telling::CuttingOrder order = telling::cutting_order(judgement);
  Figure figure{.kind = "order", .judgement = judgement_index};
  figure.numbers = {.caption = "Half keenness of each run to that of its edge",
                    .columns = {{.head = "order"},
                                {.head = "run", .side = telling::Side::left},
                                {.head = "edge", .side = telling::Side::left},
                                {.head = "medium", .side = telling::Side::left},
                                {.head = "block", .side = telling::Side::left},
                                {.head = "times as long"}}};
  std::vector<RunInOrder> runs;
  for (std::size_t i = 0; i < judgement.runs.size(); ++i) {
    const auto& ratio = reported.runs[i].half_keenness_over_arm;
    if (order.places[i] && ratio) {
      runs.push_back(
          {.run = &judgement.runs[i], .place = *order.places[i], .over_its_arm = *ratio});
    }
  }
  if (runs.size() < 3) return std::nullopt;
  std::ranges::sort(runs, {}, &RunInOrder::place);
  figure.caption = order_caption(order, names, runs);
  const std::vector<telling::ArmGroup> groups = telling::groups_of(judgement);
  for (const auto& [run, place, ratio] : runs) {
    figure.numbers.rows.push_back({.cells = {std::to_string(place),
                                             run->name,
                                             names[run->arm].name,
                                             medium_of(groups, run->arm),
                                             run->block,
                                             telling::to_figures(ratio, 2)}});
  }
  const auto [least, most] = std::ranges::minmax_element(runs, {}, &RunInOrder::over_its_arm);
  figure.words =
      fmt::format("Runs lasted between {} and {} times as long as their edge typically does.",
                  telling::to_figures(least->over_its_arm, 2),
                  telling::to_figures(most->over_its_arm, 2));
  return figure;
}

}  // namespace keenfall::page
