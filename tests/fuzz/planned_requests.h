// Requests of a plan that is being written: their bodies are read, and what is answered at once is
// made of them.
#pragma once

#include <string>
#include <string_view>

namespace keenfall::fuzz {

// path: of the request. Nothing where it is of no plan. Aborts where an answer does not hold: a
// plan that was read is written and read as the same, and the chances of all verdicts add up to 1.
void plan_as_asked(std::string_view path, const std::string& body);

}  // namespace keenfall::fuzz
