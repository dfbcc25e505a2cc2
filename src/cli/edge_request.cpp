#include "cli/edge_request.h"

#include "cli/option_numbers.h"
#include "workbench/work_words.h"

#include <algorithm>
#include <utility>

namespace keenfall::cli {

namespace {

using Problems = std::vector<base::Problem>;

constexpr double kUsualAngleDeg = 20;
constexpr const char* kUsualFinish = "fine";

base::Problem under_option(base::Problem problem, const std::string& option) {
  problem.place.column = option;
  return problem;
}

// What was found, or its problem among the others.
template <class Found>
void keep(base::Result<Found> found,
          const std::string& option,
          std::vector<Found>& all,
          Problems& problems) {
  if (found) {
    all.push_back(std::move(*found));
  } else {
    problems.push_back(under_option(found.error(), option));
  }
}

std::vector<std::string> or_usual(const std::vector<std::string>& typed,
                                  const std::vector<std::string>& usual) {
  return typed.empty() ? usual : typed;
}

void read_works(const TypedSimulation& typed,
                const workbench::ApexCatalogue& catalogue,
                const UsualEdges& usual,
                EdgeRequest& request,
                Problems& problems) {
  for (const std::string& words : typed.schedules) {
    keep(workbench::work_in_words(words, catalogue), "--schedule", request.works, problems);
  }
  const bool names_none = typed.media.empty() && !typed.schedules.empty();
  if (names_none) return;
  for (const std::string& name : or_usual(typed.media, usual.media)) {
    keep(workbench::find_medium(catalogue, name).transform(wear::work_in),
         "--medium",
         request.works,
         problems);
  }
}

void read_edges(const TypedSimulation& typed,
                const workbench::ApexCatalogue& catalogue,
                EdgeRequest& request,
                Problems& problems) {
  std::vector<workbench::NamedFinish> finishes;
  for (const std::string& name : or_usual(typed.finishes, {kUsualFinish})) {
    keep(workbench::find_finish(catalogue, name), "--finish", finishes, problems);
  }
  std::vector<double> angles;
  for (const std::string& angle : typed.angles) {
    keep(number_of("--angle", angle), "--angle", angles, problems);
  }
  if (typed.angles.empty()) angles.push_back(kUsualAngleDeg);
  for (const double angle : angles) {
    for (const workbench::NamedFinish& finish : finishes) {
      request.edges.push_back(
          {.finish_name = finish.name, .finish = finish.finish, .apex_angle = {angle}});
    }
  }
}

}  // namespace

workbench::CatalogueFiles catalogue_files(const TypedOptions& typed) {
  return {.steels = typed.simulated.steels_file.value_or(""),
          .media = typed.simulated.media_file.value_or(""),
          .finishes = typed.simulated.finishes_file.value_or("")};
}

base::ResultOrProblems<EdgeRequest> edge_request(const TypedOptions& typed,
                                                 const workbench::ApexCatalogue& catalogue,
                                                 const UsualEdges& usual,
                                                 unsigned threads_at_hand) {
  EdgeRequest request{.threads = std::max(1U, threads_at_hand)};
  Problems problems;
  for (const std::string& name : or_usual(typed.simulated.steels, usual.steels)) {
    keep(workbench::find_steel(catalogue, name), "--steel", request.steels, problems);
  }
  read_works(typed.simulated, catalogue, usual, request, problems);
  read_edges(typed.simulated, catalogue, request, problems);
  const auto set = [&problems](const auto& number, auto& into) {
    if (number) {
      into = *number;
    } else {
      problems.push_back(number.error());
    }
  };
  if (typed.cuts) set(whole_number_of("--cuts", *typed.cuts), request.cuts);
  if (typed.simulated.edge_length) {
    set(number_of("--edge-length", *typed.simulated.edge_length), request.edge_length_mm);
  }
  if (typed.seed) {
    set(seed_of("--seed", *typed.seed), request.seed);
  }
  if (typed.threads) {
    set(threads_of("--threads", *typed.threads), request.threads);
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return request;
}

}  // namespace keenfall::cli
