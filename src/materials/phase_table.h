// The rows of the table of phases.
#pragma once

#include "materials/phases.h"

#include <vector>

namespace keenfall::materials {

[[nodiscard]] std::vector<Phase> phases_in_steel();  // carbides and nitrides
[[nodiscard]] std::vector<Phase> minerals_and_abrasives();

}  // namespace keenfall::materials
