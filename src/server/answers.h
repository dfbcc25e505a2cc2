// Answers in JSON: what was asked for, or why not. The one table from kinds of problems to HTTP
// statuses (RFC 9110, section 15) is here.
#pragma once

#include "base/result.h"
#include "server/http_message.h"

#include <span>
#include <string>

namespace keenfall::server {

[[nodiscard]] HttpResponse json_answer(std::string json, int status = 200);

[[nodiscard]] int status_of(base::ProblemKind kind);

// At least one; the first one's kind gives the status.
[[nodiscard]] HttpResponse problems_answer(std::span<const base::Problem> problems);
[[nodiscard]] HttpResponse problem_answer(const base::Problem& problem);

// What a path names is not there.
[[nodiscard]] HttpResponse not_found(const std::string& sentence);

}  // namespace keenfall::server
