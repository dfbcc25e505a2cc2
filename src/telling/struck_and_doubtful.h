// How many readings are struck out and how many doubtful, and what would change otherwise.
//
// Struck readings do not count and doubtful ones do; the quick engine was asked the other way round
// (verdicts/second_opinion.h). Out: a text for each of the two that there are.
#pragma once

#include "telling/arm_groups.h"
#include "verdicts/judgement.h"

#include <string>
#include <vector>

namespace keenfall::telling {

[[nodiscard]] std::vector<std::string> struck_and_doubtful(const verdicts::Judgement& judgement,
                                                           const std::vector<ArmName>& names);

}  // namespace keenfall::telling
