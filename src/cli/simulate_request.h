// What a simulate command asks for, read from its options and checked.
#pragma once

#include "base/result.h"
#include "cli/edge_request.h"
#include "cli/typed_options.h"
#include "wear/simulated_trial.h"

#include <string>

namespace keenfall::cli {

struct SimulateRequest {
  wear::TrialPlan plan;
  unsigned threads = 1;
  std::string out;       // a file for the table; empty: none
  std::string notebook;  // empty: none
  bool truth = false;
};

// Fails with every option whose value cannot be used, all at once.
[[nodiscard]] base::ResultOrProblems<SimulateRequest> simulate_request(
    const TypedOptions& typed, const workbench::ApexCatalogue& catalogue, unsigned threads_at_hand);

}  // namespace keenfall::cli
