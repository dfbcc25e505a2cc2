// The rows behind known_steels(), in groups: one function per group and file.
#pragma once

#include "materials/steels.h"

#include <vector>

namespace keenfall::materials {

[[nodiscard]] std::vector<Steel> carbon_and_low_alloy_steels();
[[nodiscard]] std::vector<Steel> tool_steels();
[[nodiscard]] std::vector<Steel> stainless_steels();

}  // namespace keenfall::materials
