#include "telling/what_else_differed.h"

#include "telling/arm_groups.h"
#include "telling/differing_throughout.h"
#include "telling/listed.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::telling {

namespace {

using verdicts::AlsoDiffers;
using verdicts::Comparison;
using verdicts::Judgement;
using verdicts::Matching;

void add_once(std::vector<std::string>& items, const std::string& item) {
  if (std::ranges::count(items, item) == 0) items.push_back(item);
}

std::string things_that_are(const Comparison& comparison, Matching matching) {
  std::vector<std::string> things;
  for (const AlsoDiffers& thing : comparison.also_differs) {
    if (thing.matching != matching) continue;
    // Written down for both, and still not known to be the same.
    const bool is_half_said =
        matching == Matching::not_recorded && !thing.a.empty() && !thing.b.empty();
    things.push_back(is_half_said ? "the grit system of the " + thing.what : thing.what);
  }
  return listed(things);
}

std::string differences(const Comparison& comparison) {
  std::string words;
  for (const AlsoDiffers& thing : comparison.also_differs) {
    if (thing.matching != Matching::differs) continue;
    words += fmt::format(
        "{}{} ({} against {})", words.empty() ? "" : ", ", thing.what, thing.a, thing.b);
  }
  return words;
}

// "differs in steel (X153CrMoV12 against C75S); matched: finish; not recorded: hardness."
std::string differences_words(const Comparison& comparison) {
  std::string sentence;
  const auto add = [&sentence](const std::string& head, const std::string& things) {
    if (!things.empty()) sentence += (sentence.empty() ? "" : "; ") + head + things;
  };
  add("differs in ", differences(comparison));
  add("not recorded: ", things_that_are(comparison, Matching::not_recorded));
  add("matched: ", things_that_are(comparison, Matching::matched));
  return sentence.empty() ? sentence : sentence + ".";
}

// The arm listed later against the one listed earlier, whichever lasts longer: so a pair that is
// alike in two media is said once.
Comparison as_listed(Comparison comparison) {
  if (comparison.a > comparison.b) return comparison;
  std::swap(comparison.a, comparison.b);
  for (AlsoDiffers& thing : comparison.also_differs) std::swap(thing.a, thing.b);
  return comparison;
}

// Things that are matched, or unrecorded, for every comparison: said once.
std::string common_to_all(const Judgement& judgement, Matching matching) {
  const std::string first = things_that_are(judgement.comparisons.front(), matching);
  const bool same = std::ranges::all_of(judgement.comparisons, [&](const Comparison& comparison) {
    return things_that_are(comparison, matching) == first;
  });
  return same ? first : std::string();
}

// "1.4 (1.2 to 1.7)", or "0.7 (0.6 to 0.8)".
std::string ratio_with_interval(const numerics::Interval& ratio) {
  return fmt::format("{} ({} to {})",
                     to_figures(ratio.median, 2),
                     to_figures(ratio.lo95, 2),
                     to_figures(ratio.hi95, 2));
}

// Covariates whose effect is clear of none: the others are in the numbers only.
std::vector<std::string> covariate_sentences(const Judgement& judgement) {
  std::vector<std::string> sentences;
  for (const verdicts::CovariateEffect& effect : judgement.covariates) {
    if (effect.ratio.lo95 <= 1 && 1 <= effect.ratio.hi95) continue;
    switch (effect.covariate) {
      case verdicts::Covariate::start_reading:
        sentences.push_back(fmt::format(
            "A run that starts 10 % blunter than its edge usually does takes {} times as many {} "
            "to half keenness; allowed for.",
            ratio_with_interval(effect.ratio),
            judgement.counted.many));
        break;
      case verdicts::Covariate::order_of_cutting:
        sentences.push_back(fmt::format(
            "The last run of the trial lasted {} times as long as the first would have; allowed "
            "for.",
            ratio_with_interval(effect.ratio)));
        break;
    }
  }
  return sentences;
}

}  // namespace

std::optional<Section> what_else_differed(const Judgement& judgement) {
  if (judgement.comparisons.empty()) return std::nullopt;
  const std::vector<ArmName> names = names_of(judgement);
  const std::string matched = common_to_all(judgement, Matching::matched);
  const std::string unrecorded = common_to_all(judgement, Matching::not_recorded);
  std::vector<std::string> items;
  if (!matched.empty()) items.push_back("Matched in every pair: " + matched + ".");
  if (!unrecorded.empty()) items.push_back("Not recorded for any pair: " + unrecorded + ".");
  const std::vector<DiffersThroughout> throughout = differing_throughout(judgement, names);
  for (const DiffersThroughout& fact : throughout) items.push_back(fact.sentence);
  for (const Comparison& comparison : judgement.comparisons) {
    Comparison own = as_listed(comparison);
    std::erase_if(own.also_differs, [&](const AlsoDiffers& thing) {
      return std::ranges::count(throughout, thing.what, &DiffersThroughout::what) > 0 ||
             (thing.matching == Matching::matched && !matched.empty()) ||
             (thing.matching == Matching::not_recorded && !unrecorded.empty());
    });
    const std::string words = differences_words(own);
    if (!words.empty()) add_once(items, pair_name(own, names) + ": " + words);
  }
  for (std::string& sentence : covariate_sentences(judgement)) items.push_back(std::move(sentence));
  if (items.empty()) return std::nullopt;
  return Section{.id = "what_else",
                 .heading = "What else could explain a difference",
                 .items = all_plain(items)};
}

}  // namespace keenfall::telling
