#include "telling/struck_and_doubtful.h"

#include "telling/rounded.h"

#include <fmt/format.h>
#include <optional>
#include <string_view>

namespace keenfall::telling {

namespace {

using verdicts::Comparison;
using verdicts::Judgement;

// What other readings would change, of "Counted" or "Left out"; empty where nobody knows.
std::string if_otherwise(const Judgement& judgement,
                         const std::vector<ArmName>& names,
                         std::string_view otherwise,
                         std::optional<verdicts::SecondOpinion> Comparison::*answer) {
  bool asked = false;
  std::string changed;
  for (const Comparison& pair : judgement.comparisons) {
    const auto& opinion = pair.*answer;
    if (!opinion) continue;
    asked = true;
    if (opinion->agrees) continue;
    changed += fmt::format(" {} on {} would read: {}, by {} ({} to {}).",
                           pair_name(pair, names),
                           judgement.arms[pair.a].arm.medium.name,
                           verdicts::in_words(opinion->verdict),
                           to_figures(opinion->ratio.median, 2),
                           to_figures(opinion->simultaneous.lo95, 2),
                           to_figures(opinion->simultaneous.hi95, 2));
  }
  if (!asked) return {};
  return changed.empty() ? fmt::format(" {}, no verdict would change.", otherwise)
                         : fmt::format(" {}:{}", otherwise, changed);
}

// Pairs of which nobody can tell, since an arm has no reading that is not doubtful.
std::string without_an_answer(const Judgement& judgement, const std::vector<ArmName>& names) {
  std::string pairs;
  for (const Comparison& pair : judgement.comparisons) {
    if (!pair.quick || pair.without_doubtful) continue;
    pairs += fmt::format(" Without them, {} on {} cannot be compared.",
                         pair_name(pair, names),
                         judgement.arms[pair.a].arm.medium.name);
  }
  return pairs;
}

}  // namespace

std::vector<std::string> struck_and_doubtful(const Judgement& judgement,
                                             const std::vector<ArmName>& names) {
  std::vector<std::string> items;
  int struck = 0;
  int doubtful = 0;
  for (const verdicts::RunResult& run : judgement.runs) {
    struck += run.readings_struck;
    if (run.not_used_because.empty()) doubtful += run.readings_doubtful;
  }
  if (struck > 0) {
    items.push_back(
        (struck == 1 ? std::string("1 reading is") : fmt::format("{} readings are", struck)) +
        " struck out: kept, but not used." +
        if_otherwise(judgement, names, "Counted", &Comparison::with_struck));
  }
  if (doubtful > 0) {
    items.push_back(
        (doubtful == 1 ? std::string("1 reading is") : fmt::format("{} readings are", doubtful)) +
        " marked as doubtful, and used all the same." +
        if_otherwise(judgement, names, "Left out", &Comparison::without_doubtful) +
        without_an_answer(judgement, names));
  }
  return items;
}

}  // namespace keenfall::telling
