// What a comparison says, in one sentence, in plain words, cuts and metres.
#pragma once

#include "telling/arm_groups.h"
#include "telling/sentence.h"
#include "verdicts/judgement.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::telling {

// "C stays keen 3.1 times as long as A (95 % interval 2.2 to 4.3): longer, and worth having. 108
// cuts (10.8 m) against 34 (3.4 m)." The medium goes before it. `names`: of all arms.
[[nodiscard]] Sentence answer_sentence(const verdicts::Judgement& judgement,
                                       const verdicts::Comparison& comparison,
                                       const std::vector<ArmName>& names);

// Its first half: what is found, without the cuts, the provisos and the doubts.
[[nodiscard]] Sentence bare_answer(const verdicts::Judgement& judgement,
                                   const verdicts::Comparison& comparison,
                                   const std::vector<ArmName>& names);

// "About 5 more runs each would probably settle it."; empty where it is settled. Says first to cut
// further where the comparison rests on a curve carried on.
[[nodiscard]] std::string further_runs_sentence(const verdicts::Comparison& comparison);

}  // namespace keenfall::telling
