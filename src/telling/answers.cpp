#include "telling/answers.h"

#include "base/plain_number.h"
#include "telling/across_media_words.h"
#include "telling/answer_sentences.h"
#include "telling/arm_groups.h"
#include "telling/cuts_compared.h"
#include "telling/gathered_answers.h"
#include "telling/level_words.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>

namespace keenfall::telling {

namespace {

using verdicts::ArmResult;
using verdicts::Comparison;
using verdicts::Judgement;

MediumAnswers answers_on(const Judgement& judgement,
                         const ArmGroup& group,
                         const std::vector<ArmName>& names) {
  MediumAnswers told{.on = "On " + group.medium_words};
  if (group.comparisons.size() > kMostSentences) {
    told.gathered = gathered_by_verdict(judgement, group, names);
  } else {
    for (const std::size_t index : group.comparisons) {
      told.answers.push_back(
          {.comparison = index,
           .sentence = answer_sentence(judgement, judgement.comparisons[index], names)});
    }
  }
  for (const std::string& remark : remarks_on_all(judgement, group)) {
    told.remarks.push_back(plain(remark));
  }
  return told;
}

std::string claim_words(const Judgement& judgement) {
  const auto claims = [&](verdicts::ClaimAbout about) {
    return std::ranges::count(judgement.comparisons, about, &Comparison::claim_about) > 0;
  };
  if (!claims(verdicts::ClaimAbout::these_blades)) {
    return "This is about the steels: several specimens of each were cut.";
  }
  if (claims(verdicts::ClaimAbout::the_steels)) {
    return "About the steels where several specimens of both were cut, else about these blades "
           "only.";
  }
  const bool one_each =
      std::ranges::all_of(judgement.arms, [](const ArmResult& arm) { return arm.specimens <= 1; });
  return one_each ? "These blades, not their steels: one specimen each."
                  : "These blades, not their steels: that takes several specimens of each.";
}

// What the words of the answers mean.
std::string terms_words(const Judgement& judgement) {
  const bool to_half = std::ranges::any_of(judgement.comparisons, [](const Comparison& comparison) {
    return comparison.at.what == verdicts::ComparedAt::half_keenness;
  });
  return (to_half ? "An edge stays keen " + keen_until(judgement) + ". " : std::string()) +
         "Worth having means " + base::plain_number(judgement.worth_it_margin) +
         " times as long or more.";
}

NoAnswer not_usable(const Judgement& judgement) {
  NoAnswer told{
      .why = {.words = {{"No verdict", Tone::not_settled}, {": the fit is not usable."}}}};
  for (const std::string& reason : judgement.fit.reasons) told.reasons.push_back(plain(reason));
  return told;
}

std::string lasting_sentence(const Judgement& judgement, std::size_t index, const ArmName& name) {
  const ArmResult& arm = judgement.arms[index];
  const verdicts::At at{.what = judgement.test ? verdicts::ComparedAt::test
                                               : verdicts::ComparedAt::half_keenness};
  const auto& cuts = cuts_compared(arm, at).cuts;
  return fmt::format("On {}, {} {} {}, 95 % interval {} to {}.",
                     arm.arm.medium.name,
                     name.name,
                     judgement.test ? "passes its test for" : "stays keen for",
                     cuts_in_words(judgement, arm, at),
                     cuts_text(cuts.lo95),
                     cuts_text(cuts.hi95));
}

// No comparisons from a usable fit.
NoAnswer nothing_compared(const Judgement& judgement, const std::vector<ArmName>& names) {
  NoAnswer told;
  for (std::size_t i = 0; i < judgement.arms.size(); ++i) {
    told.lasting.push_back(plain(lasting_sentence(judgement, i, names[i])));
  }
  told.why = plain(judgement.arms.size() < 2
                       ? "There is nothing to compare it with: a verdict needs a second blade or "
                         "edge, cut in the same medium by the same method."
                       : "Nothing is compared: no two of these were cut in the same medium by "
                         "the same method.");
  return told;
}

}  // namespace

Answers answers_to(const Judgement& judgement) {
  if (!judgement.fit.usable) return {.instead = not_usable(judgement)};
  const std::vector<ArmName> names = names_of(judgement);
  if (judgement.comparisons.empty()) {
    Answers told{.instead = nothing_compared(judgement, names)};
    if (!judgement.test) told.terms = plain("An edge stays keen " + keen_until(judgement) + ".");
    return told;
  }
  Answers told{.terms = plain(terms_words(judgement)),
               .across_media = across_media_sentences(judgement),
               .claim = plain(claim_words(judgement))};
  const std::vector<ArmGroup> groups = groups_of(judgement);
  for (std::size_t i = 0; i < groups.size(); ++i) {
    if (groups[i].comparisons.empty()) continue;
    told.media.push_back(answers_on(judgement, groups[i], names));
    told.media.back().group = i;
  }
  return told;
}

}  // namespace keenfall::telling
