#include "telling/gathered_answers.h"

#include "telling/cuts_compared.h"
#include "telling/listed.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>

namespace keenfall::telling {

namespace {

using verdicts::Comparison;
using verdicts::Judgement;
using verdicts::Verdict;

// "24 against 1, 2 and 3; 23 against 1": the pairs of one verdict, by the blade that lasts longer.
std::string pairs_of(const Judgement& judgement,
                     const ArmGroup& group,
                     Verdict verdict,
                     const std::vector<ArmName>& names) {
  std::vector<std::size_t> longer_ones;
  for (const std::size_t index : group.comparisons) {
    const Comparison& comparison = judgement.comparisons[index];
    const bool is_new = std::ranges::count(longer_ones, comparison.a) == 0;
    if (comparison.verdict == verdict && is_new) longer_ones.push_back(comparison.a);
  }
  std::string text;
  for (const std::size_t a : longer_ones) {
    std::vector<std::size_t> shorter_ones;
    for (const std::size_t index : group.comparisons) {
      const Comparison& comparison = judgement.comparisons[index];
      if (comparison.a == a && comparison.verdict == verdict) shorter_ones.push_back(comparison.b);
    }
    std::ranges::sort(shorter_ones);
    std::vector<std::string> others;
    for (const std::size_t b : shorter_ones) others.push_back(names[b].label);
    text += (text.empty() ? "" : "; ") + names[a].label + " against " + listed(others);
  }
  return text;
}

// "K24 lasts longest by the middle of its interval (127 cuts). Not told apart from it: K19 and
// K23."
std::vector<Sentence> longest_of(const Judgement& judgement,
                                 const ArmGroup& group,
                                 const std::vector<ArmName>& names) {
  const verdicts::At& at = judgement.comparisons[group.comparisons.front()].at;
  std::optional<std::size_t> longest;
  const auto middle = [&](std::size_t arm) {
    return cuts_compared(judgement.arms[arm], at).cuts.median;
  };
  for (const std::size_t arm : group.arms) {
    if (!cuts_are_known(judgement, judgement.arms[arm], at)) continue;
    if (!longest || middle(arm) > middle(*longest)) longest = arm;
  }
  if (!longest) return {};
  std::vector<std::size_t> equals;
  for (const std::size_t index : group.comparisons) {
    const Comparison& pair = judgement.comparisons[index];
    const bool told_apart =
        is_settled(pair.verdict) && pair.verdict != Verdict::practically_the_same;
    if (told_apart || (pair.a != *longest && pair.b != *longest)) continue;
    equals.push_back(pair.a == *longest ? pair.b : pair.a);
  }
  std::ranges::sort(equals);
  std::vector<std::string> others;
  for (const std::size_t arm : equals) others.push_back(names[arm].name);
  return {plain(fmt::format("{} lasts longest by the middle of its interval ({}). {}",
                            names[*longest].name,
                            cuts_in_words(judgement, judgement.arms[*longest], at),
                            others.empty() ? "It is told apart from every other."
                                           : "Not told apart from it: " + listed(others) + "."))};
}

}  // namespace

std::vector<Sentence> gathered_by_verdict(const Judgement& judgement,
                                          const ArmGroup& group,
                                          const std::vector<ArmName>& names) {
  std::vector<Verdict> verdicts_met;
  for (const std::size_t index : group.comparisons) {
    const Verdict verdict = judgement.comparisons[index].verdict;
    if (std::ranges::count(verdicts_met, verdict) == 0) verdicts_met.push_back(verdict);
  }
  std::stable_partition(verdicts_met.begin(), verdicts_met.end(), verdicts::is_settled);
  std::vector<Sentence> sentences = longest_of(judgement, group, names);
  for (const Verdict verdict : verdicts_met) {
    const auto count = std::ranges::count_if(group.comparisons, [&](std::size_t index) {
      return judgement.comparisons[index].verdict == verdict;
    });
    const std::string words(verdicts::in_words(verdict));
    const std::string of_all = fmt::format("{} of {} pairs: ", count, group.comparisons.size());
    if (is_settled(verdict)) {
      sentences.push_back({.words = {{of_all},
                                     {words, Tone::settled},
                                     {": " + pairs_of(judgement, group, verdict, names) + "."}}});
    } else {
      sentences.push_back({.words = {{of_all}, {words, Tone::not_settled}, {"."}},
                           .left_out = "how many more runs each needs"});
    }
  }
  if (labels_need_a_key(names))
    sentences.push_back(plain("The numbers are those of the table of edges."));
  return sentences;
}

}  // namespace keenfall::telling
