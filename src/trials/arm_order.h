// The order in which arms are listed: blades as a person would sort them (2 before 10), then edges,
// then media and methods.
#pragma once

#include "trials/trial.h"

#include <string_view>

namespace keenfall::trials {

// Runs of digits by their number, the rest letter by letter.
[[nodiscard]] bool naturally_before(std::string_view one, std::string_view other);

[[nodiscard]] bool listed_before(const Arm& one, const Arm& other);

}  // namespace keenfall::trials
