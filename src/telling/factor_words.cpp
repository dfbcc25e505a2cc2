#include "telling/factor_words.h"

#include "telling/listed.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <string>
#include <string_view>

namespace keenfall::telling {

namespace {

using verdicts::Factor;
using verdicts::FactorEffects;
using verdicts::Judgement;

bool is_of_the_edge(const Factor& factor) {
  constexpr std::array<std::string_view, 4> kOthers{"blade", "steel", "medium", "cut method"};
  return std::ranges::count(kOthers, factor.what) == 0;
}

// "bevel angle (along with the finish)"
std::string factor_words(const Factor& factor) {
  if (factor.goes_with.empty()) return factor.what;
  return factor.what + " (along with the " + listed(factor.goes_with) + ")";
}

Words verdict_words(verdicts::Verdict verdict) {
  return {std::string(verdicts::in_words(verdict)),
          is_settled(verdict) ? Tone::settled : Tone::not_settled};
}

// An interaction is larger or smaller, not longer or shorter.
Words interaction_words(verdicts::Verdict verdict) {
  using verdicts::Verdict;
  switch (verdict) {
    case Verdict::longer_and_worth_having:
    case Verdict::shorter_by_enough_to_matter:
      return {"they work on each other, by enough to matter", Tone::settled};
    case Verdict::longer:
    case Verdict::shorter:
      return {"they work on each other", Tone::settled};
    case Verdict::longer_but_too_little_to_matter:
    case Verdict::shorter_but_too_little_to_matter:
      return {"they work on each other, but too little to matter", Tone::settled};
    case Verdict::practically_the_same:
      return {"practically the same at both", Tone::settled};
    case Verdict::not_settled:
      break;
  }
  return {"not settled", Tone::not_settled};
}

Sentence effect_sentence(const Judgement& judgement, const verdicts::FactorEffect& effect) {
  const Factor& factor = judgement.factors->factors[effect.factor];
  const double margin = judgement.worth_it_margin;
  const std::string ratio =
      fmt::format("{}, {} against {}: {} times as many {} (95 % interval {} to {}): ",
                  factor_words(factor),
                  factor.levels[effect.level],
                  factor.levels.front(),
                  ratio_text(effect.ratio.median, margin),
                  judgement.counted.many,
                  ratio_text(effect.simultaneous.lo95, margin),
                  ratio_text(effect.simultaneous.hi95, margin));
  return {.words = {{ratio}, verdict_words(effect.verdict), {"."}}};
}

Sentence interaction_sentence(const FactorEffects& found,
                              const verdicts::FactorInteraction& both,
                              double margin) {
  const Factor& factor = found.factors[both.factor];
  const Factor& other = found.factors[both.other_factor];
  const std::string ratio = fmt::format(
      "{}, {} against {}: that ratio is {} times as large at {} {} as at {} (95 % interval {} to "
      "{}): ",
      factor.what,
      factor.levels[both.level],
      factor.levels.front(),
      ratio_text(both.ratio.median, margin),
      other.what,
      other.levels[both.other_level],
      other.levels.front(),
      ratio_text(both.simultaneous.lo95, margin),
      ratio_text(both.simultaneous.hi95, margin));
  return {.words = {{ratio}, interaction_words(both.verdict), {"."}}};
}

}  // namespace

std::optional<Section> factor_section(const Judgement& judgement) {
  if (!judgement.factors || std::ranges::none_of(judgement.factors->factors, is_of_the_edge)) {
    return std::nullopt;
  }
  const FactorEffects& found = *judgement.factors;
  Section section{
      .id = "factors",
      .heading = "What each factor does",
      .lead = plain("What each factor does, averaged over the others (intervals of all at once)")};
  for (const auto& effect : found.effects) {
    section.items.push_back(effect_sentence(judgement, effect));
  }
  for (const auto& both : found.interactions) {
    section.items.push_back(interaction_sentence(found, both, judgement.worth_it_margin));
  }
  if (!found.arms_left_out.empty()) {
    const std::size_t left_out = found.arms_left_out.size();
    section.remarks.push_back(plain(fmt::format("{} of {} arms {} not part of the crossed table.",
                                                left_out,
                                                judgement.arms.size(),
                                                left_out == 1 ? "is" : "are")));
  }
  for (const std::string& remark : found.remarks) section.remarks.push_back(plain(remark));
  return section;
}

}  // namespace keenfall::telling
