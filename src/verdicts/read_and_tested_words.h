// What is said beside comparisons of edges read with edges tested: what they rest on, and what they
// cannot say.
#pragma once

#include "verdicts/judgement.h"
#include "verdicts/read_and_tested.h"

#include <string>
#include <vector>

namespace keenfall::verdicts {

// Plain sentences; judgement: with its arms and comparisons already in place.
[[nodiscard]] std::vector<std::string> not_told_by_reading_and_testing(const Judgement& judgement,
                                                                       const ReadEdges& read,
                                                                       const TestedEdges& tested);

// What the ratio would be, were the level lower or higher; pair: with its three ratios by level.
[[nodiscard]] std::string what_the_level_does(const Comparison& pair);

}  // namespace keenfall::verdicts
