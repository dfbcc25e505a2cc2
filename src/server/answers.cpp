#include "server/answers.h"

#include "base/require.h"
#include "wire/problems_json.h"

#include <utility>

namespace keenfall::server {

HttpResponse json_answer(std::string json, int status) {
  return {.status = status, .content_type = "application/json", .body = std::move(json)};
}

int status_of(base::ProblemKind kind) {
  constexpr int kBadRequest = 400;
  constexpr int kConflict = 409;
  constexpr int kTooLarge = 413;
  switch (kind) {
    case base::ProblemKind::bad_value:
    case base::ProblemKind::missing:
    case base::ProblemKind::unknown_name:
    case base::ProblemKind::unsuitable_data:
      return kBadRequest;
    case base::ProblemKind::conflicting:
    case base::ProblemKind::unreadable:
    case base::ProblemKind::interrupted:
      return kConflict;
    case base::ProblemKind::too_large:
      return kTooLarge;
  }
  return kBadRequest;
}

HttpResponse problems_answer(std::span<const base::Problem> problems) {
  base::require(!problems.empty(), "what was refused has a problem");
  return json_answer(wire::problems_to_json(problems), status_of(problems.front().kind));
}

HttpResponse problem_answer(const base::Problem& problem) {
  return problems_answer(std::span(&problem, 1));
}

HttpResponse not_found(const std::string& sentence) {
  constexpr int kNotFound = 404;
  return json_answer(wire::refusal_to_json("not_found", sentence), kNotFound);
}

}  // namespace keenfall::server
