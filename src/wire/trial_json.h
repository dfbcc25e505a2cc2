// A trial as JSON, with every reading, strike and void. Private to this folder (it shows the
// library).
#pragma once

#include "trials/trial.h"
#include "wire/json_pieces.h"

namespace keenfall::wire {

[[nodiscard]] Json trial_json(const trials::Trial& trial);

}  // namespace keenfall::wire
