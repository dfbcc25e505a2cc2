#include "telling/lasting.h"

#include "telling/level_words.h"
#include "verdicts/runs_compared.h"

#include <algorithm>
#include <vector>

namespace keenfall::telling {

namespace {

std::string level_or_half_keenness(const verdicts::Judgement& judgement, const verdicts::At& at) {
  const std::string level = level_words(judgement, at);
  return level.empty() ? "to half keenness" : level;
}

}  // namespace

verdicts::At compared_at(const verdicts::Judgement& judgement, const ArmGroup& group) {
  return verdicts::where_compared(judgement, group.arms.front());
}

std::string lasting_words(const verdicts::Judgement& judgement, const verdicts::At& at) {
  return judgement.counted.many + " " + level_or_half_keenness(judgement, at);
}

std::string runs_lasting_words(const verdicts::Judgement& judgement) {
  struct Level {
    verdicts::At at;
    std::string media;
  };
  std::vector<Level> levels;
  for (const ArmGroup& group : groups_of(judgement)) {
    const verdicts::At at = compared_at(judgement, group);
    const auto same = std::ranges::find(levels, at, &Level::at);
    if (same == levels.end()) {
      levels.push_back({.at = at, .media = group.medium_words});
    } else {
      same->media += ", " + group.medium_words;
    }
  }
  if (levels.empty()) return judgement.counted.many;
  if (levels.size() == 1) return lasting_words(judgement, levels.front().at);
  std::string words = judgement.counted.many;
  for (const Level& level : levels) {
    words += &level == &levels.front() ? " " : "; ";
    words += level_or_half_keenness(judgement, level.at) + " (" + level.media + ")";
  }
  return words;
}

}  // namespace keenfall::telling
