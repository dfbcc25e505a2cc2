// What the arms and the cuttings of a plan are called, as shortly as they can be told apart: arms
// within one cutting.
#pragma once

#include "materials/told_in.h"
#include "trials/plan.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::planning {

// One for each arm: "A", or where not all arms have one edge, "A (17° per side)", "A (edge not
// said)".
[[nodiscard]] std::vector<std::string> words_of_arms(std::span<const trials::PlannedArm> arms,
                                                     const materials::ToldIn& told = {});

// One for each cutting: its medium, "sisal"; where several have one medium, with what else is said
// of it: "sisal, wet, push cut of 30 mm".
[[nodiscard]] std::vector<std::string> words_of_cuttings(
    std::span<const trials::PlannedCutting> cuttings);

}  // namespace keenfall::planning
