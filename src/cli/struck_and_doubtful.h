// How many readings are struck out and how many doubtful, and what would change otherwise.
//
// Struck readings do not count and doubtful ones do; the quick engine was asked the other way round
// (verdicts/second_opinion.h). Out: a text for each of the two that there are.
#pragma once

#include "verdicts/judgement.h"

#include <functional>
#include <string>
#include <vector>

namespace keenfall::cli {

using PairNames = std::function<std::string(const verdicts::Comparison&)>;

[[nodiscard]] std::vector<std::string> struck_and_doubtful(const verdicts::Judgement& judgement,
                                                           const PairNames& name_of);

}  // namespace keenfall::cli
