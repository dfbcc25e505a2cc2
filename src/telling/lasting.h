// What lasting is counted to in a judgement, as a heading or an axis says it.
#pragma once

#include "verdicts/judgement.h"

#include <string>

namespace keenfall::telling {

// Where the arms are compared, or would be.
[[nodiscard]] verdicts::At compared_at(const verdicts::Judgement& judgement);

// "cuts to half keenness", "cuts to reach 400 gf", "cuts to fail the test".
[[nodiscard]] std::string lasting_words(const verdicts::Judgement& judgement);

}  // namespace keenfall::telling
