// Whether what is told was cut by anybody.
#pragma once

#include "verdicts/judgement.h"

namespace keenfall::telling {

// At least one of the runs was made by a simulator.
[[nodiscard]] bool is_simulated(const verdicts::Judgement& judgement);

}  // namespace keenfall::telling
