#include "cli/edge_request.h"

#include "cli/option_numbers.h"
#include "cli/steel_words.h"
#include "workbench/work_words.h"

#include <algorithm>
#include <utility>

namespace keenfall::cli {

namespace {

using Problems = std::vector<base::Problem>;

constexpr double kUsualAngleDeg = 20;
constexpr const char* kUsualFinish = "fine";

base::Problem of_option(base::Problem problem, const std::string& option) {
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
    problems.push_back(of_option(found.error(), option));
  }
}

// Names that were meant, or none and why.
std::vector<std::string> names_or_problem(const MeantThings& things, Problems& problems) {
  const auto names = meant(things);
  if (names) return *names;
  problems.push_back(names.error());
  return {};
}

void read_steels(const TypedSimulation& typed,
                 const workbench::ApexCatalogue& catalogue,
                 const UsualEdges& usual,
                 ReadEdges& read) {
  const MeantThings things{.option = "--steel",
                           .file_option = "--steels",
                           .typed = typed.steels,
                           .at_hand = names_of_things(catalogue.steels),
                           .own = catalogue.own_steels,
                           .usual = usual.steels,
                           .is_one = usual.is_one_of_each};
  for (const std::string& name : names_or_problem(things, read.problems)) {
    keep(steel_without_angle(catalogue, name), "--steel", read.request.steels, read.problems);
  }
  if (read.request.steels.empty()) read.request.steels.push_back(catalogue.steels.back());
}

void read_works(const TypedSimulation& typed,
                const workbench::ApexCatalogue& catalogue,
                const UsualEdges& usual,
                ReadEdges& read) {
  auto& works = read.request.works;
  for (const std::string& words : typed.schedules) {
    keep(workbench::work_in_words(words, catalogue), "--schedule", works, read.problems);
  }
  const bool names_none = typed.media.empty() && !typed.schedules.empty();
  if (!names_none) {
    const MeantThings things{.option = "--medium",
                             .file_option = "--media",
                             .typed = typed.media,
                             .at_hand = names_of_things(catalogue.media),
                             .own = catalogue.own_media,
                             .usual = usual.media,
                             .is_one = usual.is_one_of_each};
    for (const std::string& name : names_or_problem(things, read.problems)) {
      keep(workbench::find_medium(catalogue, name).transform(wear::work_in),
           "--medium",
           works,
           read.problems);
    }
  }
  if (works.empty()) works.push_back(wear::work_in(catalogue.media.back()));
}

void read_finishes_and_angles(const TypedSimulation& typed,
                              const workbench::ApexCatalogue& catalogue,
                              const UsualEdges& usual,
                              ReadEdges& read) {
  std::vector<workbench::NamedFinish> finishes;
  const MeantThings things{.option = "--finish",
                           .file_option = "--finishes",
                           .typed = typed.finishes,
                           .at_hand = names_of_things(catalogue.finishes),
                           .own = catalogue.own_finishes,
                           .usual = {kUsualFinish},
                           .is_one = usual.is_one_of_each};
  for (const std::string& name : names_or_problem(things, read.problems)) {
    keep(workbench::find_finish(catalogue, name), "--finish", finishes, read.problems);
  }
  if (finishes.empty()) finishes.push_back(catalogue.finishes.back());
  std::vector<double> angles;
  for (const std::string& angle : typed.angles) {
    keep(angle_per_side_of("--angle", angle), "--angle", angles, read.problems);
  }
  if (angles.empty()) angles.push_back(kUsualAngleDeg);
  for (const double angle : angles) {
    for (const workbench::NamedFinish& finish : finishes) {
      read.request.edges.push_back(
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

base::Result<std::vector<std::string>> meant(const MeantThings& things) {
  if (!things.typed.empty()) return things.typed;
  if (things.own == 0) return things.usual;
  std::vector<std::string> own(things.at_hand.begin(),
                               things.at_hand.begin() + static_cast<std::ptrdiff_t>(things.own));
  if (own.size() == 1 || !things.is_one) return own;
  std::string names;
  for (const std::string& name : own) names += (names.empty() ? "" : ", ") + name;
  return base::failed({.kind = base::ProblemKind::missing,
                       .sentence = "the table of " + things.file_option + " holds " +
                                   std::to_string(own.size()) + ": say with " + things.option +
                                   " which is meant.",
                       .place = {.column = things.file_option},
                       .accepted = names});
}

ReadEdges read_edges(const TypedOptions& typed,
                     const workbench::ApexCatalogue& catalogue,
                     const UsualEdges& usual,
                     unsigned threads_at_hand) {
  ReadEdges read{.request = {.threads = std::max(1U, threads_at_hand)}, .problems = {}};
  EdgeRequest& request = read.request;
  read_steels(typed.simulated, catalogue, usual, read);
  read_works(typed.simulated, catalogue, usual, read);
  read_finishes_and_angles(typed.simulated, catalogue, usual, read);
  const auto set = [&read](const auto& number, auto& into) {
    if (number) {
      into = *number;
    } else {
      read.problems.push_back(number.error());
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
  return read;
}

}  // namespace keenfall::cli
