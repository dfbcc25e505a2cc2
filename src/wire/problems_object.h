// A problem as an object within a document. Private to this folder (it shows the library).
#pragma once

#include "base/result.h"
#include "wire/json_pieces.h"

#include <span>

namespace keenfall::wire {

[[nodiscard]] Json problem_json(const base::Problem& problem);
[[nodiscard]] Json problems_array(std::span<const base::Problem> problems);

// As text that ends in a newline; what is not UTF-8 becomes U+FFFD.
[[nodiscard]] std::string document_of(const Json& json);

}  // namespace keenfall::wire
