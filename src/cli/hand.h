// Whose hand a command of a notebook is: --who, or whoever is logged in; on this machine, now.
#pragma once

#include "cli/surroundings.h"
#include "cli/typed_options.h"

namespace keenfall::cli {

[[nodiscard]] workbench::Hand hand_of(const TypedOptions& typed, const Surroundings& around);

}  // namespace keenfall::cli
