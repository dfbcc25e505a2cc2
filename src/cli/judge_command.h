// keenfall judge TABLE...: from tables of readings to an answer.
#pragma once

#include "cli/judge_request.h"
#include "cli/outcome.h"
#include "cli/surroundings.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::cli {

[[nodiscard]] Outcome judge_command(std::span<const std::string> words,
                                    const Surroundings& surroundings);

// The judgements as text, as JSON, or both, wherever the request wants them.
[[nodiscard]] Outcome shown_judgements(const std::vector<verdicts::Judgement>& judgements,
                                       const JudgeRequest& request,
                                       const Surroundings& surroundings);

}  // namespace keenfall::cli
