// Checkpoints that a run passed over, and readings far from those of the arm's other runs.
//
// Both are often slips in the table, and both are taken as they stand: a remark only names them. A
// checkpoint is missed where at least three quarters of the medium's runs (four or more) have it
// and the run goes on after it. A reading is far off where it lies more than six robust standard
// deviations, and half as much again, from the median of its arm's runs at that checkpoint (six or
// more). Limits: common practice, no source.
#pragma once

#include "trials/trial.h"

#include <string>
#include <vector>

namespace keenfall::exchange {

[[nodiscard]] std::vector<std::string> remarks_on_gaps(const trials::Trial& trial);
[[nodiscard]] std::vector<std::string> remarks_on_far_readings(const trials::Trial& trial);

}  // namespace keenfall::exchange
