#include "planning/crossed_arms.h"

#include "base/begun_large.h"

#include <algorithm>
#include <utility>

namespace keenfall::planning {

namespace {

using trials::EdgePreparation;
using trials::PlannedArm;

base::Problem nothing_of(const std::string& what, const std::string& field) {
  return {.kind = base::ProblemKind::missing,
          .sentence = "There is no " + what + " to compare yet.",
          .place = {.column = field},
          .accepted = "one " + what + " or more"};
}

base::Problem named_twice(const std::string& what, const std::string& name, const char* field) {
  return {
      .kind = base::ProblemKind::conflicting,
      .sentence = base::begun_large(what) + " is chosen twice; an arm is cut with once a block.",
      .place = {.column = field, .found = name},
      .accepted = "each of them once"};
}

std::optional<base::Problem> missing_from(const ArmChoices& choices) {
  if (choices.blades.empty()) return nothing_of("blade", "blades");
  if (choices.edges.empty()) return nothing_of("edge", "edges");
  if (choices.cuttings == 0) return nothing_of("medium", "cuttings");
  for (auto blade = choices.blades.begin(); blade != choices.blades.end(); ++blade) {
    if (std::count(choices.blades.begin(), blade, *blade) > 0) {
      return named_twice("the blade " + *blade, *blade, "blades");
    }
  }
  return std::nullopt;
}

std::optional<base::Problem> too_many(std::size_t arms) {
  if (arms <= kMostArms) return std::nullopt;
  return base::Problem{
      .kind = base::ProblemKind::too_large,
      .sentence = "That would be " + std::to_string(arms) +
                  " arms, each cut once in every block: more than a trial can hold.",
      .place = {.column = "arms"},
      .accepted = std::to_string(kMostArms) + " arms or fewer"};
}

std::optional<base::Problem> edge_twice(const std::vector<EdgePreparation>& edges) {
  for (auto edge = edges.begin(); edge != edges.end(); ++edge) {
    if (std::count(edges.begin(), edge, *edge) == 0) continue;
    const std::string words = in_words(*edge);
    return named_twice(
        words.empty() ? "an edge of which nothing is said" : "the edge " + words, words, "edges");
  }
  return std::nullopt;
}

std::string number_of(std::size_t count, const std::string& one) {
  return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

// A choice nobody made leaves the field unsaid.
template <class T>
std::vector<std::optional<T>> or_unsaid(const std::vector<T>& choices) {
  std::vector<std::optional<T>> all(choices.begin(), choices.end());
  if (all.empty()) all.emplace_back();
  return all;
}

}  // namespace

base::Result<std::vector<PlannedArm>> crossed_arms(const ArmChoices& choices) {
  if (auto problem = missing_from(choices)) return base::failed(*std::move(problem));
  if (auto problem = edge_twice(choices.edges)) return base::failed(*std::move(problem));
  // Each factor by itself first, so that no product runs over.
  for (const std::size_t count : {choices.blades.size(), choices.edges.size(), choices.cuttings}) {
    if (auto problem = too_many(count)) return base::failed(*std::move(problem));
  }
  if (auto problem = too_many(choices.blades.size() * choices.edges.size() * choices.cuttings)) {
    return base::failed(*std::move(problem));
  }
  std::vector<PlannedArm> arms;
  for (std::size_t cutting = 0; cutting < choices.cuttings; ++cutting) {
    for (const std::string& blade : choices.blades) {
      for (const EdgePreparation& edge : choices.edges) {
        arms.push_back({.blade = blade, .edge = edge, .cutting = cutting});
      }
    }
  }
  return arms;
}

base::Result<std::vector<PlannedArm>> best_against_best(const ArmChoices& choices) {
  if (auto problem = missing_from(choices)) return base::failed(*std::move(problem));
  if (choices.edges.size() != choices.blades.size()) {
    return base::failed(
        {.kind = base::ProblemKind::conflicting,
         .sentence = "Best against best gives every blade its own edge; here stand " +
                     number_of(choices.blades.size(), "blade") + " and " +
                     number_of(choices.edges.size(), "edge") + ".",
         .place = {.column = "edges"},
         .accepted = "one edge for each blade, in the order of the blades"});
  }
  for (const std::size_t count : {choices.blades.size(), choices.cuttings}) {
    if (auto problem = too_many(count)) return base::failed(*std::move(problem));
  }
  if (auto problem = too_many(choices.blades.size() * choices.cuttings)) {
    return base::failed(*std::move(problem));
  }
  std::vector<PlannedArm> arms;
  for (std::size_t cutting = 0; cutting < choices.cuttings; ++cutting) {
    for (std::size_t b = 0; b < choices.blades.size(); ++b) {
      arms.push_back({.blade = choices.blades[b], .edge = choices.edges[b], .cutting = cutting});
    }
  }
  return arms;
}

base::Result<std::vector<EdgePreparation>> crossed_edges(const EdgeChoices& choices) {
  std::size_t product = 1;
  for (const std::size_t count :
       {choices.bevel_angles.size(), choices.apex_angles.size(), choices.finishes.size()}) {
    product *= std::max(count, std::size_t{1});
    // After each factor, so that no product runs over.
    if (product <= kMostArms) continue;
    return base::failed({.kind = base::ProblemKind::too_large,
                         .sentence = "That would be " + std::to_string(product) +
                                     " edges or more, each an arm of its own: more than a trial "
                                     "can hold.",
                         .place = {.column = "edge_choices"},
                         .accepted = std::to_string(kMostArms) + " edges or fewer"});
  }
  std::vector<EdgePreparation> edges;
  for (const auto& bevel : or_unsaid(choices.bevel_angles)) {
    for (const auto& apex : or_unsaid(choices.apex_angles)) {
      for (const auto& finish : or_unsaid(choices.finishes)) {
        edges.push_back({.bevel_angle = bevel,
                         .apex_angle = apex,
                         .finish = finish.value_or(""),
                         .thickness_behind_edge_mm = choices.thickness_behind_edge_mm});
      }
    }
  }
  return edges;
}

}  // namespace keenfall::planning
