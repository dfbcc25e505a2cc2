// The answer first: what is said of each medium's comparisons, of all media together and of what
// it holds for; or why there is no answer.
#pragma once

#include "telling/sentence.h"
#include "verdicts/judgement.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::telling {

// More than this many comparisons in one medium are gathered by verdict: nobody would read them.
inline constexpr std::size_t kMostSentences = 10;

struct Answer {
  std::size_t comparison = 0;  // index into Judgement::comparisons
  Sentence sentence;

  bool operator==(const Answer&) const = default;
};

// What is said of the comparisons in one medium by one method.
struct MediumAnswers {
  std::size_t group = 0;           // place in groups_of (arm_groups.h)
  std::string on;                  // "On new matting": begins the sentence, or heads the list
  std::vector<Answer> answers;     // by falling ratio; none where they are gathered
  std::vector<Sentence> gathered;  // by verdict (gathered_answers.h), where they are many
  std::vector<Sentence> remarks;   // that hold for all of them

  bool operator==(const MediumAnswers&) const = default;
};

// What is said where no comparison is.
struct NoAnswer {
  std::vector<Sentence> lasting;  // how long each arm lasts, where the fit tells it
  Sentence why;                   // and what would make an answer
  std::vector<Sentence> reasons;  // of a fit that is not usable

  bool operator==(const NoAnswer&) const = default;
};

struct Answers {
  std::optional<NoAnswer> instead;  // present: all that follows is empty
  Sentence terms;                   // what "keen" and "worth having" mean here
  std::vector<MediumAnswers> media;
  std::vector<Sentence> across_media;
  Sentence claim;  // about these blades or about their steels

  bool operator==(const Answers&) const = default;
};

[[nodiscard]] Answers answers_to(const verdicts::Judgement& judgement);

}  // namespace keenfall::telling
