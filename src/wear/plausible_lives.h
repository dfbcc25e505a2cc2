// How long one edge may last over all constants that are not well known: half keenness by a push
// reading and by a slice, each with its range over joint draws (sensitivity.h).
//
// Plausible is not probable.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "wear/apex_scenario.h"
#include "wear/edge_story.h"
#include "wear/sensitivity.h"

namespace keenfall::wear {

struct PlausibleLives {
  Sensitivity push;
  Sensitivity slice;
};

struct LivesAsked {
  int runs = 10;  // edges of one draw, of whose lives the median is taken
  SensitivityAsked over;
};

[[nodiscard]] ApexScenario scenario_of(const EdgeQuestion& question);

// Fails as `sensitivity` does.
[[nodiscard]] base::Result<PlausibleLives> plausible_lives(
    const ApexScenario& scenario,
    const LivesAsked& asked,
    const base::Executor& executor,
    const base::ProgressReport& progress = base::unwatched());

}  // namespace keenfall::wear
