// What is asked and planned as text, a fact a line: for a person to read, and for the digest by
// which a sealed plan is known to be the one that was sealed.
//
// Two that differ in anything have different texts; the same ones have the same on every machine.
#pragma once

#include "notebook/plans.h"

#include <string>

namespace keenfall::notebook {

// Ends in a newline. Angles per side.
[[nodiscard]] std::string plan_text(const Asked& asked);

}  // namespace keenfall::notebook
