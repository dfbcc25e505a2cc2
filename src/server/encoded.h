// From what a job gives back to an answer: the value as JSON, or its problems.
#pragma once

#include "base/result.h"
#include "server/answers.h"
#include "server/http_message.h"

#include <string>
#include <vector>

namespace keenfall::server {

// Of what a path names by an identifier: where that is what was not found, 404.
[[nodiscard]] inline HttpResponse about_named(HttpResponse answer,
                                              const base::Problem& problem,
                                              const std::string& named) {
  constexpr int kNotFound = 404;
  const bool is_not_there = problem.kind == base::ProblemKind::unknown_name && !named.empty() &&
                            problem.place.found == named;
  if (is_not_there) answer.status = kNotFound;
  return answer;
}

// to_json: the value as text.
template <class Value, class ToJson>
[[nodiscard]] HttpResponse encoded(const base::Result<Value>& result,
                                   ToJson to_json,
                                   const std::string& named = {}) {
  if (result) return json_answer(to_json(*result));
  return about_named(problem_answer(result.error()), result.error(), named);
}

template <class Value, class ToJson>
[[nodiscard]] HttpResponse encoded(const base::ResultOrProblems<Value>& result,
                                   ToJson to_json,
                                   const std::string& named = {}) {
  if (result) return json_answer(to_json(*result));
  return about_named(problems_answer(result.error()), result.error().front(), named);
}

}  // namespace keenfall::server
