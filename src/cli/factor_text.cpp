#include "cli/factor_text.h"

#include "cli/text_layout.h"
#include "telling/listed.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

namespace keenfall::cli {

namespace {

using verdicts::Factor;
using verdicts::FactorEffects;
using verdicts::Judgement;

constexpr std::size_t kMostSaid = 12;

bool is_of_the_edge(const Factor& factor) {
  constexpr std::array<std::string_view, 4> kOthers{"blade", "steel", "medium", "cut method"};
  return std::ranges::count(kOthers, factor.what) == 0;
}

// "bevel angle (along with the finish)"
std::string factor_words(const Factor& factor) {
  if (factor.goes_with.empty()) return factor.what;
  return factor.what + " (along with the " + telling::listed(factor.goes_with) + ")";
}

std::string verdict_shown(verdicts::Verdict verdict, const Look& look) {
  const std::string words(verdicts::in_words(verdict));
  return is_settled(verdict) ? as_settled(words, look) : as_not_settled(words, look);
}

// An interaction is larger or smaller, not longer or shorter.
std::string interaction_shown(verdicts::Verdict verdict, const Look& look) {
  using verdicts::Verdict;
  switch (verdict) {
    case Verdict::longer_and_worth_having:
    case Verdict::shorter_by_enough_to_matter:
      return as_settled("they work on each other, by enough to matter", look);
    case Verdict::longer:
    case Verdict::shorter:
      return as_settled("they work on each other", look);
    case Verdict::longer_but_too_little_to_matter:
    case Verdict::shorter_but_too_little_to_matter:
      return as_settled("they work on each other, but too little to matter", look);
    case Verdict::practically_the_same:
      return as_settled("practically the same at both", look);
    case Verdict::not_settled:
      break;
  }
  return as_not_settled("not settled", look);
}

std::string effect_sentence(const Judgement& judgement,
                            const verdicts::FactorEffect& effect,
                            const Look& look) {
  const Factor& factor = judgement.factors->factors[effect.factor];
  const double margin = judgement.worth_it_margin;
  return fmt::format("{}, {} against {}: {} times as many {} (95 % interval {} to {}): {}.",
                     shown_as(factor_words(factor), look),
                     shown_as(factor.levels[effect.level], look),
                     shown_as(factor.levels.front(), look),
                     telling::ratio_text(effect.ratio.median, margin),
                     judgement.counted.many,
                     telling::ratio_text(effect.simultaneous.lo95, margin),
                     telling::ratio_text(effect.simultaneous.hi95, margin),
                     verdict_shown(effect.verdict, look));
}

std::string interaction_sentence(const FactorEffects& found,
                                 const verdicts::FactorInteraction& both,
                                 double margin,
                                 const Look& look) {
  const Factor& factor = found.factors[both.factor];
  const Factor& other = found.factors[both.other_factor];
  return fmt::format(
      "{}, {} against {}: that ratio is {} times as large at {} {} as at {} (95 % interval {} to "
      "{}): {}.",
      shown_as(factor.what, look),
      shown_as(factor.levels[both.level], look),
      shown_as(factor.levels.front(), look),
      telling::ratio_text(both.ratio.median, margin),
      shown_as(other.what, look),
      shown_as(other.levels[both.other_level], look),
      shown_as(other.levels.front(), look),
      telling::ratio_text(both.simultaneous.lo95, margin),
      telling::ratio_text(both.simultaneous.hi95, margin),
      interaction_shown(both.verdict, look));
}

}  // namespace

std::string factor_section(const Judgement& judgement, const Look& look) {
  if (!judgement.factors || std::ranges::none_of(judgement.factors->factors, is_of_the_edge)) {
    return {};
  }
  const FactorEffects& found = *judgement.factors;
  const double margin = judgement.worth_it_margin;
  std::vector<std::string> items;
  for (const auto& effect : found.effects) {
    items.push_back(effect_sentence(judgement, effect, look));
  }
  for (const auto& both : found.interactions) {
    items.push_back(interaction_sentence(found, both, margin, look));
  }
  if (items.size() > kMostSaid) {
    const std::size_t more = items.size() - kMostSaid;
    items.resize(kMostSaid);
    items.push_back(fmt::format("and {} more; --json holds them all.", more));
  }
  if (!found.arms_left_out.empty()) {
    items.push_back(fmt::format("{} of {} arms are not part of the crossed table.",
                                found.arms_left_out.size(),
                                judgement.arms.size()));
  }
  for (const std::string& remark : found.remarks) items.push_back(shown_as(remark, look));
  std::string text = wrapped(
      "What each factor does, averaged over the others (intervals of all at once)", {}, look);
  for (const std::string& item : items) text += wrapped(item, {.first = 2, .rest = 4}, look);
  return text;
}

}  // namespace keenfall::cli
