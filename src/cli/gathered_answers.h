// Many comparisons in one medium, told by verdict instead of a sentence each: "57 of 276 pairs:
// longer, and worth having: 24 against 1, 2 and 3; 23 against 1."
#pragma once

#include "cli/look.h"
#include "telling/arm_groups.h"

#include <string>
#include <vector>

namespace keenfall::cli {

[[nodiscard]] std::string gathered_by_verdict(const verdicts::Judgement& judgement,
                                              const telling::ArmGroup& group,
                                              const std::vector<telling::ArmName>& names,
                                              const Look& look);

}  // namespace keenfall::cli
