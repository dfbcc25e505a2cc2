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

// What is used where an option is left out and there is no file of one's own for it; with a file,
// what stands in that.
struct UsualEdges {
  std::vector<std::string> steels;
  std::vector<std::string> media;
  bool is_one_of_each = false;  // then a file of several things must be chosen from
};

struct ReadEdges {
  EdgeRequest request;
  // Of every option whose value cannot be used; there, the request has something in its place, so
  // that its ranges, which are the simulator's own, can be looked at all the same.
  std::vector<base::Problem> problems;
};
[[nodiscard]] ReadEdges read_edges(const TypedOptions& typed,
                                   const workbench::ApexCatalogue& catalogue,
                                   const UsualEdges& usual,
                                   unsigned threads_at_hand);

// The things of a kind that are meant: as typed; else those of one's own file (the first `own` of
// the things at hand); else the usual. Fails where one is needed and the file holds several.
struct MeantThings {
  std::string option;       // "--steel"
  std::string file_option;  // "--steels"
  std::vector<std::string> typed;
  std::vector<std::string> at_hand;
  std::size_t own = 0;
  std::vector<std::string> usual;
  bool is_one = false;
};
[[nodiscard]] base::Result<std::vector<std::string>> meant(const MeantThings& things);

template <class Thing>
[[nodiscard]] std::vector<std::string> names_of_things(const std::vector<Thing>& things) {
  std::vector<std::string> names;
  for (const Thing& thing : things) names.push_back(thing.name);
  return names;
}

[[nodiscard]] workbench::CatalogueFiles catalogue_files(const TypedOptions& typed);

}  // namespace keenfall::cli
