// How much the half keenness of a run will scatter as it is read: from run to run, and by reading.
#pragma once

#include "planning/assumptions.h"
#include "trials/plan.h"

#include <cstddef>
#include <optional>

namespace keenfall::planning {

// Log sd, of a middling arm; absent where too little is assumed or planned of that cutting.
[[nodiscard]] std::optional<double> read_scatter(const trials::Plan& plan,
                                                 const Assumptions& assumptions,
                                                 std::size_t cutting);

}  // namespace keenfall::planning
