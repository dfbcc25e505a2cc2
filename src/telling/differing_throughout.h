// Facts that differ in every pair that is compared, gathered by arm: "Hardness differs in every
// pair (A 58, B 58.5, C 61 HRC)." takes one line where the pairs would take one each.
//
// A fact is gathered only where an arm's name stands for one value throughout; and only where there
// are several comparisons.
#pragma once

#include "telling/arm_groups.h"
#include "verdicts/judgement.h"

#include <string>
#include <vector>

namespace keenfall::telling {

struct DiffersThroughout {
  std::string what;      // as in AlsoDiffers::what
  std::string sentence;  // with each arm's value
};

[[nodiscard]] std::vector<DiffersThroughout> differing_throughout(
    const verdicts::Judgement& judgement, const std::vector<ArmName>& names);

}  // namespace keenfall::telling
