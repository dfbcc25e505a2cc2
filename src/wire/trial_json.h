// A trial as JSON, with every reading, strike and void; readings and lengths told in the units
// asked for, those of one kind and thread in one unit. Private to this folder (it shows the
// library).
#pragma once

#include "materials/told_in.h"
#include "trials/trial.h"
#include "wire/json_pieces.h"

namespace keenfall::wire {

[[nodiscard]] Json trial_json(const trials::Trial& trial, const materials::ToldIn& told = {});

}  // namespace keenfall::wire
