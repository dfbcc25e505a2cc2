#include "telling/headline.h"

#include "base/require.h"
#include "telling/answer_sentences.h"
#include "telling/answers.h"
#include "telling/arm_groups.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string>

namespace keenfall::telling {

namespace {

using verdicts::Comparison;
using verdicts::Judgement;
using verdicts::Verdict;

// The most telling first.
constexpr std::array kByTelling{Verdict::longer_and_worth_having,
                                Verdict::shorter_by_enough_to_matter,
                                Verdict::longer,
                                Verdict::shorter,
                                Verdict::practically_the_same,
                                Verdict::longer_but_too_little_to_matter,
                                Verdict::shorter_but_too_little_to_matter,
                                Verdict::not_settled};

std::ptrdiff_t rank_of(Verdict verdict) {
  return std::ranges::find(kByTelling, verdict) - kByTelling.begin();
}

bool tells_more(const Comparison& one, const Comparison& other) {
  const auto rank = rank_of(one.verdict);
  const auto other_rank = rank_of(other.verdict);
  if (rank != other_rank) return rank < other_rank;
  return one.ratio.median > other.ratio.median;
}

Sentence in_its_medium(const Judgement& judgement, const Comparison& comparison) {
  Sentence sentence = bare_answer(judgement, comparison, names_of(judgement));
  for (const ArmGroup& group : groups_of(judgement)) {
    if (std::ranges::count(group.arms, comparison.a) == 0) continue;
    sentence.words.insert(sentence.words.begin(), {"On " + group.medium_words + ", "});
  }
  return sentence;
}

// "5 more comparisons: 1 longer, and worth having; 3 practically the same; 1 not settled."
Sentence the_others(const Judgement& judgement, const Comparison& told) {
  const std::size_t others = judgement.comparisons.size() - 1;
  std::string words =
      fmt::format("{} more {}: ", others, others == 1 ? "comparison" : "comparisons");
  bool is_first = true;
  for (const Verdict verdict : kByTelling) {
    auto count = std::ranges::count(judgement.comparisons, verdict, &Comparison::verdict);
    if (verdict == told.verdict) --count;
    if (count == 0) continue;
    const std::string verdict_words(verdicts::in_words(verdict));
    words += is_first ? "" : "; ";
    words += others == 1 ? verdict_words : fmt::format("{} {}", count, verdict_words);
    is_first = false;
  }
  return plain(words + ".");
}

std::vector<Sentence> instead_of_an_answer(const NoAnswer& none) {
  std::vector<Sentence> sentences;
  if (!none.lasting.empty()) sentences.push_back(none.lasting.front());
  sentences.push_back(none.why);
  return sentences;
}

}  // namespace

std::vector<Sentence> headline(std::span<const Judgement> judgements) {
  base::require(!judgements.empty(), "a headline is of at least one judgement");
  const auto answered = std::ranges::find_if(
      judgements, [](const Judgement& judgement) { return !judgement.comparisons.empty(); });
  if (answered == judgements.end()) {
    const Answers none = answers_to(judgements.front());
    return instead_of_an_answer(*none.instead);
  }
  const auto told = std::ranges::min_element(answered->comparisons, tells_more);
  std::vector<Sentence> sentences{in_its_medium(*answered, *told)};
  if (answered->comparisons.size() > 1) sentences.push_back(the_others(*answered, *told));
  return sentences;
}

}  // namespace keenfall::telling
