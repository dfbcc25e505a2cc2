// What a thing must be to be in the kit. Private to the folder.
#pragma once

#include "base/result.h"
#include "notebook/kit.h"

#include <optional>

namespace keenfall::notebook {

// The first thing that is wrong; nothing where it can be kept.
[[nodiscard]] std::optional<base::Problem> problem_of(const KitThing& thing);

}  // namespace keenfall::notebook
