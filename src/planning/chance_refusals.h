// Why the chances of a plan cannot be worked out.
#pragma once

#include "base/result.h"
#include "planning/assumptions.h"
#include "planning/chances.h"
#include "trials/plan.h"

#include <optional>

namespace keenfall::planning {

// Absent: they can.
[[nodiscard]] std::optional<base::Problem> why_no_chances(const trials::Plan& plan,
                                                          const Assumptions& assumptions,
                                                          const ChancesAsked& asked);

}  // namespace keenfall::planning
