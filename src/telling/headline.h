// A trial's answer in as few sentences as it can be said, for where there is room for one or two.
//
// In: the judgements of one trial, at least one. Out: first the most telling comparison (one that
// is settled and worth having before one that is merely longer, then practically the same, too
// little to matter, not settled; among equals the largest ratio), then how the others came out, if
// there are any. Where nothing is compared: how long an arm lasts, or why there is no answer.
#pragma once

#include "telling/sentence.h"
#include "verdicts/judgement.h"

#include <span>
#include <vector>

namespace keenfall::telling {

[[nodiscard]] std::vector<Sentence> headline(std::span<const verdicts::Judgement> judgements);

}  // namespace keenfall::telling
