// Checkpoints that a run passed over, readings far from those of the arm's other runs, and runs
// that may be in another unit.
//
// All are often slips in the table, and both are taken as they stand: a remark only names them. A
// checkpoint is missed where at least three quarters of the medium's runs (four or more) have it
// and the run goes on after it. A reading is far off where it lies more than six robust standard
// deviations, and half as much again, from the median of its arm's runs at that checkpoint (six or
// more). A run whose first readings are 30 times as large or as small as the other runs' may be in
// another unit. Limits: common practice, no source.
#pragma once

#include "trials/trial.h"

#include <string>
#include <vector>

namespace keenfall::exchange {

[[nodiscard]] std::vector<std::string> remarks_on_gaps(const trials::Trial& trial);
[[nodiscard]] std::vector<std::string> remarks_on_far_readings(const trials::Trial& trial);
[[nodiscard]] std::vector<std::string> remarks_on_units(const trials::Trial& trial);

}  // namespace keenfall::exchange
