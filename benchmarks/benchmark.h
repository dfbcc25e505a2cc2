// The benchmarks, one function each: it measures, prints what it found, and fails when something
// could not be measured. A bar that is not met is said and is no failure.
#pragma once

#include "base/result.h"

#include <optional>

namespace keenfall::benchmarks {

using Outcome = std::optional<base::Problem>;  // empty: measured

[[nodiscard]] Outcome reading_a_table();     // reading
[[nodiscard]] Outcome growth_of_reading();   // reading-growth
[[nodiscard]] Outcome typical_trial();       // typical
[[nodiscard]] Outcome plain_model();         // plain-ess
[[nodiscard]] Outcome judging_process();     // judge-process
[[nodiscard]] Outcome hundred_runs();        // judging-120
[[nodiscard]] Outcome growth_of_judging();   // judging-growth
[[nodiscard]] Outcome large_trial();         // large
[[nodiscard]] Outcome keeping_a_notebook();  // notebook
[[nodiscard]] Outcome asking_the_app();      // app
[[nodiscard]] Outcome blunting_edges();      // apex
[[nodiscard]] Outcome growth_of_blunting();  // apex-growth

}  // namespace keenfall::benchmarks
