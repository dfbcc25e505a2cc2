// Many comparisons in one medium, told by verdict instead of a sentence each: "57 of 276 pairs:
// longer, and worth having: 24 against 1, 2 and 3; 23 against 1." Settled ones come first.
#pragma once

#include "telling/arm_groups.h"
#include "telling/sentence.h"
#include "verdicts/judgement.h"

#include <vector>

namespace keenfall::telling {

[[nodiscard]] std::vector<Sentence> gathered_by_verdict(const verdicts::Judgement& judgement,
                                                        const ArmGroup& group,
                                                        const std::vector<ArmName>& names);

}  // namespace keenfall::telling
