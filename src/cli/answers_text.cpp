#include "cli/answers_text.h"

#include "cli/sentence_text.h"
#include "cli/text_layout.h"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace keenfall::cli {

namespace {

constexpr std::size_t kMostArms = 10;
constexpr Indent kAnswer = {.first = 2, .rest = 4};

std::string terms_text(const telling::Answers& answers, const Look& look) {
  if (answers.terms.words.empty()) return {};
  return wrapped(sentence_text(answers.terms, look), {}, look);
}

std::string no_answer_text(const telling::NoAnswer& instead, const Look& look) {
  std::vector<telling::Sentence> lasting = instead.lasting;
  lasting.resize(std::min(lasting.size(), kMostArms));
  return sentences_text(lasting, {.rest = 2}, look) +
         wrapped(sentence_text(instead.why, look), {}, look) +
         sentences_text(instead.reasons, kAnswer, look);
}

std::string medium_text(const telling::MediumAnswers& medium, const Look& look) {
  const std::string remarks = sentences_text(medium.remarks, {.first = 2, .rest = 2}, look);
  const std::string on = shown_as(medium.on, look);
  if (medium.answers.size() == 1) {
    const std::string sentence = sentence_text(medium.answers.front().sentence, look);
    return wrapped(on + ", " + sentence, {.rest = 2}, look) + remarks;
  }
  std::string text = wrapped(on + ":", {}, look);
  for (const telling::Answer& answer : medium.answers) {
    text += wrapped(sentence_text(answer.sentence, look), kAnswer, look);
  }
  return text + sentences_text(medium.gathered, kAnswer, look) + remarks;
}

}  // namespace

std::string answers_text(const telling::Answers& answers, const Look& look) {
  if (answers.instead) {
    return no_answer_text(*answers.instead, look) + terms_text(answers, look);
  }
  std::string text;
  for (const telling::MediumAnswers& medium : answers.media) text += medium_text(medium, look);
  if (!answers.across_media.empty()) {
    text +=
        wrapped("Across media:", {}, look) + sentences_text(answers.across_media, kAnswer, look);
  }
  return text + terms_text(answers, look) + wrapped(sentence_text(answers.claim, look), {}, look);
}

}  // namespace keenfall::cli
