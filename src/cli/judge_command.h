// keenfall judge TABLE...: from tables of readings to an answer.
#pragma once

#include "cli/judge_request.h"
#include "cli/outcome.h"
#include "cli/surroundings.h"
#include "cli/use_cases.h"

#include <functional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::cli {

[[nodiscard]] Outcome judge_command(std::span<const std::string> words,
                                    const Surroundings& surroundings);

// The work of a request, with progress shown and Ctrl-C heard.
using Judging = std::function<Judgements(const base::Executor&, const base::ProgressReport&)>;
[[nodiscard]] Judgements judged_while_watched(const JudgeRequest& request,
                                              const Judging& judging,
                                              const Surroundings& surroundings);

// The judgements as text, as JSON, or both, wherever the request wants them.
[[nodiscard]] Outcome shown_judgements(const std::vector<verdicts::Judgement>& judgements,
                                       const JudgeRequest& request,
                                       const Surroundings& surroundings);

}  // namespace keenfall::cli
