// For tests: what is told as plain text, a line for each sentence.
#pragma once

#include "telling/answers.h"
#include "telling/section.h"
#include "telling/sentence.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::telling::testing {

inline std::string said(const std::vector<Sentence>& sentences) {
  std::string text;
  for (const Sentence& sentence : sentences) text += text_of(sentence) + "\n";
  return text;
}

// The lead, or the heading where there is none; then items and remarks. Empty for no section.
inline std::string said(const std::optional<Section>& section) {
  if (!section) return {};
  const std::string lead = section->lead.words.empty() ? section->heading : text_of(section->lead);
  return lead + "\n" + said(section->items) + said(section->remarks);
}

inline std::string said(const Answers& answers) {
  if (answers.instead) {
    return said(answers.instead->lasting) + text_of(answers.instead->why) + "\n" +
           said(answers.instead->reasons);
  }
  std::string text = text_of(answers.terms) + "\n";
  for (const MediumAnswers& medium : answers.media) {
    text += medium.on + ":\n";
    for (const Answer& answer : medium.answers) text += text_of(answer.sentence) + "\n";
    text += said(medium.gathered) + said(medium.remarks);
  }
  return text + said(answers.across_media) + text_of(answers.claim) + "\n";
}

}  // namespace keenfall::telling::testing
