// Why something was not done, as JSON: {"problems": [{"sentence": ..., "kind": ..., ...}]}, the
// body of every answer of the app's API that is not a success (docs/wire/api.json, Problems).
#pragma once

#include "base/result.h"

#include <span>
#include <string>
#include <string_view>

namespace keenfall::wire {

// Text that is not UTF-8, as a file may hold it, is written with U+FFFD in place of what is not.
[[nodiscard]] std::string problems_to_json(std::span<const base::Problem> problems);

// Of a request itself: kind is "not_allowed", "not_let_in", "not_found", "failed" or a problem's.
[[nodiscard]] std::string refusal_to_json(std::string_view kind, std::string_view sentence);

// As the API names it: "bad_value".
[[nodiscard]] std::string_view problem_kind_name(base::ProblemKind kind);

}  // namespace keenfall::wire
