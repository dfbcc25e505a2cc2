// What stands beside the verdicts: what else differed, what the curves miss, which runs and
// readings were not used, remarks, what the data cannot say, and the fit behind it all.
#pragma once

#include "cli/look.h"
#include "verdicts/judgement.h"

#include <string>

namespace keenfall::cli {

// Each ends in a newline, or is empty when there is nothing to say.
[[nodiscard]] std::string what_else_differed(const verdicts::Judgement& judgement,
                                             const Look& look);
// Whether the quick engine comes to the same verdicts; empty when it was not asked.
[[nodiscard]] std::string second_opinions(const verdicts::Judgement& judgement, const Look& look);
[[nodiscard]] std::string curve_warnings(const verdicts::Judgement& judgement, const Look& look);
[[nodiscard]] std::string runs_and_remarks(const verdicts::Judgement& judgement, const Look& look);
[[nodiscard]] std::string how_it_was_read(const verdicts::Judgement& judgement, const Look& look);

[[nodiscard]] std::string what_cannot_be_said(const verdicts::Judgement& judgement,
                                              const Look& look);
[[nodiscard]] std::string fit_line(const verdicts::Judgement& judgement, const Look& look);

}  // namespace keenfall::cli
