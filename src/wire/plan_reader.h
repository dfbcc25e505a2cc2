// What is asked and planned, read from a request (docs/wire/api.json: Claim, Plan, Edge). Private
// to this folder.
//
// Types and what no edge or cut can be are looked at here; what else a plan lacks,
// planning/plan_flaws.h says. Words that answers add are taken back and not heeded.
#pragma once

#include "planning/crossed_arms.h"
#include "trials/plan.h"
#include "wire/request_reader.h"

#include <string>
#include <vector>

namespace keenfall::wire {

// `reader` is of the plan itself.
[[nodiscard]] trials::Plan plan_from(RequestReader& reader);

// The claims in a field of that name; none where there is no such field.
[[nodiscard]] std::vector<trials::Claim> claims_from(RequestReader& whole);

[[nodiscard]] trials::EdgePreparation edge_from(RequestReader& reader);

[[nodiscard]] planning::EdgeChoices edge_choices_from(RequestReader& reader);

}  // namespace keenfall::wire
