#include "telling/gathered_answers.h"

#include "telling/listed.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
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
  std::vector<Sentence> sentences;
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
  if (labels_need_a_key(names)) sentences.push_back(plain("The numbers are those of the table."));
  return sentences;
}

}  // namespace keenfall::telling
