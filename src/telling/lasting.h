// What lasting is counted to, as a heading or an axis says it. Each medium is compared at a level
// or a reading of its own, so it is asked for each.
#pragma once

#include "telling/arm_groups.h"
#include "verdicts/judgement.h"

#include <string>

namespace keenfall::telling {

// Where the arms of the group are compared, or would be.
[[nodiscard]] verdicts::At compared_at(const verdicts::Judgement& judgement, const ArmGroup& group);

// "cuts to half keenness", "cuts to reach 400 gf", "cuts to fail the test".
[[nodiscard]] std::string lasting_words(const verdicts::Judgement& judgement,
                                        const verdicts::At& at);

// The same of all runs in one list: where their media are compared at different places, each with
// its medium: "cuts to reach 270 gf (rope), to half keenness (board)".
[[nodiscard]] std::string runs_lasting_words(const verdicts::Judgement& judgement);

}  // namespace keenfall::telling
