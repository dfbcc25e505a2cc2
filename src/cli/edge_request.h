// Which simulated edges are asked for, with what they are cut, and how the work is run: what
// simulate and apex have in common, read from their options and checked.
#pragma once

#include "base/result.h"
#include "base/seed.h"
#include "cli/typed_options.h"
#include "wear/simulated_trial.h"
#include "workbench/apex_catalogue.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::cli {

struct EdgeRequest {
  std::vector<materials::Microstructure> steels;
  std::vector<wear::WorkPlan> works;
  std::vector<wear::TrialEdge> edges;
  std::optional<long> cuts;
  double edge_length_mm = 20;
  base::Seed seed;
  unsigned threads = 1;
};

// What is used where an option is left out.
struct UsualEdges {
  std::vector<std::string> steels;
  std::vector<std::string> media;
};

// Fails with every option whose value cannot be used, all at once. Ranges of numbers are the
// simulator's own.
[[nodiscard]] base::ResultOrProblems<EdgeRequest> edge_request(
    const TypedOptions& typed,
    const workbench::ApexCatalogue& catalogue,
    const UsualEdges& usual,
    unsigned threads_at_hand);

[[nodiscard]] workbench::CatalogueFiles catalogue_files(const TypedOptions& typed);

}  // namespace keenfall::cli
