#include "cli/gathered_answers.h"

#include "cli/text_layout.h"
#include "telling/listed.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>

namespace keenfall::cli {

namespace {

using verdicts::Comparison;
using verdicts::Judgement;
using verdicts::Verdict;

// "24 against 1, 2 and 3; 23 against 1": the pairs of one verdict, by the blade that lasts longer.
std::string pairs_of(const Judgement& judgement,
                     const telling::ArmGroup& group,
                     Verdict verdict,
                     const std::vector<telling::ArmName>& names) {
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
    text += (text.empty() ? "" : "; ") + names[a].label + " against " + telling::listed(others);
  }
  return text;
}

}  // namespace

std::string gathered_by_verdict(const Judgement& judgement,
                                const telling::ArmGroup& group,
                                const std::vector<telling::ArmName>& names,
                                const Look& look) {
  std::vector<Verdict> verdicts_met;
  for (const std::size_t index : group.comparisons) {
    const Verdict verdict = judgement.comparisons[index].verdict;
    if (std::ranges::count(verdicts_met, verdict) == 0) verdicts_met.push_back(verdict);
  }
  std::stable_partition(verdicts_met.begin(), verdicts_met.end(), verdicts::is_settled);
  std::string text;
  for (const Verdict verdict : verdicts_met) {
    const auto count = std::ranges::count_if(group.comparisons, [&](std::size_t index) {
      return judgement.comparisons[index].verdict == verdict;
    });
    const std::string words(verdicts::in_words(verdict));
    const std::string of_all = fmt::format("{} of {} pairs: ", count, group.comparisons.size());
    const std::string line =
        is_settled(verdict)
            ? of_all + as_settled(words, look) + ": " +
                  shown_as(pairs_of(judgement, group, verdict, names), look) + "."
            : of_all + as_not_settled(words, look) + "; --json has how many more runs each needs.";
    text += wrapped(line, {.first = 2, .rest = 4}, look);
  }
  const bool keyed = telling::labels_need_a_key(names);
  return text + (keyed ? wrapped("The numbers are those of the table.", {.first = 2}, look) : "");
}

}  // namespace keenfall::cli
