// A trial's judgements as a person reads them: the answer first, in sentences; then the picture;
// then the table; then what stands beside it.
#pragma once

#include "cli/look.h"
#include "verdicts/judgement.h"

#include <string>
#include <vector>

namespace keenfall::cli {

enum class HowMuch { everything, answers_only };

// At least one judgement, the kind with most readings first.
[[nodiscard]] std::string judgements_text(const std::vector<verdicts::Judgement>& judgements,
                                          HowMuch how_much,
                                          const Look& look);

}  // namespace keenfall::cli
