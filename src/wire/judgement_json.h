// A judgement as documented JSON, for other programs and for pages that draw it.
//
// In: the judgements of one trial, the kind of reading with most readings first. Out: one JSON
// document in UTF-8, ending in a newline: the first judgement at the top, the others in
// also_judged. Units: cuts as recorded, readings in the judgement's unit, angles in degrees per
// side, lengths in mm. Every number must be finite; anything else is a fault of ours and throws
// std::logic_error. Shape: docs/wire/judgement.schema.json, explained in docs/wire/README.md.
#pragma once

#include "telling/sentence.h"
#include "verdicts/judgement.h"

#include <string>
#include <vector>

namespace keenfall::wire {

inline constexpr int kJudgementFormatVersion = 1;

struct JudgementDocument {
  std::string program_version;                  // "0.1.0"
  std::vector<verdicts::Judgement> judgements;  // at least one
};

[[nodiscard]] std::string judgement_to_json(const JudgementDocument& document);

// The answer in a sentence or two as such a document holds it (telling/headline.h); none where it
// was written before there was one.
[[nodiscard]] std::vector<telling::Sentence> headline_in(const std::string& document);

}  // namespace keenfall::wire
