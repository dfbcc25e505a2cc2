// The answer first: what each comparison says, one sentence each, in plain words, cuts and metres.
//
// Settled comparisons come before unsettled ones. Where a medium has more comparisons than anybody
// would read, the pairs are gathered by verdict instead.
#pragma once

#include "cli/look.h"
#include "telling/arm_groups.h"
#include "verdicts/judgement.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::cli {

// More than this many comparisons in one medium are gathered by verdict.
inline constexpr std::size_t kMostSentences = 10;

// "C stays keen 3.1 times as long as A (95 % interval 2.2 to 4.3): longer, and worth having. 108
// cuts, 10.8 m, against 34." `on` begins it: "On new matting, "; may be empty.
[[nodiscard]] std::string answer_sentence(const verdicts::Judgement& judgement,
                                          const verdicts::Comparison& comparison,
                                          const std::vector<telling::ArmName>& names,
                                          const std::string& on,
                                          const Look& look);

// The whole section, wrapped. Says why where there is no answer.
[[nodiscard]] std::string answers_text(const verdicts::Judgement& judgement, const Look& look);

// What a comparison is at, to follow a verb: "to reach 4 times its start reading"; empty at half
// keenness.
[[nodiscard]] std::string level_words(const verdicts::Judgement& judgement, const verdicts::At& at);

}  // namespace keenfall::cli
