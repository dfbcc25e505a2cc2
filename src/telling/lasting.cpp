#include "telling/lasting.h"

#include "telling/level_words.h"

namespace keenfall::telling {

verdicts::At compared_at(const verdicts::Judgement& judgement) {
  if (!judgement.comparisons.empty()) return judgement.comparisons.front().at;
  return {.what =
              judgement.test ? verdicts::ComparedAt::test : verdicts::ComparedAt::half_keenness};
}

std::string lasting_words(const verdicts::Judgement& judgement) {
  const std::string level = level_words(judgement, compared_at(judgement));
  return judgement.counted.many + " " + (level.empty() ? "to half keenness" : level);
}

}  // namespace keenfall::telling
