#include "workbench/changed_elsewhere.h"

#include "base/plain_number.h"
#include "telling/listed.h"
#include "trials/blade.h"
#include "trials/edge.h"

#include <algorithm>
#include <cstddef>
#include <utility>
#include <variant>
#include <vector>

namespace keenfall::workbench {

namespace {

using Parts = std::vector<std::string>;

std::string joined(const Parts& parts) {
  std::string text;
  for (const std::string& part : parts) {
    if (part.empty()) continue;
    if (!text.empty()) text += ", ";
    text += part;
  }
  return text;
}

struct Said {
  std::string name;  // with what it is: "blade A"
  Parts about;
};

struct Saying {
  Said operator()(const trials::Blade& blade) const {
    Parts specimens;
    for (const trials::Specimen& specimen : blade.specimens) specimens.push_back(specimen.name);
    return {.name = "blade " + blade.name,
            .about = {blade.steel,
                      blade.hardness ? trials::in_words(*blade.hardness) : "",
                      specimens.empty() ? "" : "specimens " + telling::listed(specimens)}};
  }
  Said operator()(const trials::NamedEdge& edge) const {
    return {.name = "edge " + edge.name, .about = {trials::in_words(edge.edge), edge.note}};
  }
  Said operator()(const trials::Medium& medium) const {
    return {.name = "medium " + medium.name, .about = {medium.condition}};
  }
  Said operator()(const trials::MediumLot& lot) const {
    return {.name = "lot " + lot.name,
            .about = {"of " + lot.medium.name,
                      lot.medium.condition,
                      lot.length_m ? base::plain_number(*lot.length_m) + " m" : "",
                      lot.note}};
  }
  Said operator()(const trials::Thread& thread) const {
    return {.name = "thread " + thread.name,
            .about = {thread.kind, thread.lot.empty() ? "" : "lot " + thread.lot}};
  }
  Said operator()(const trials::ReadingKind& kind) const {
    const bool is_lower = kind.keener_when == trials::KeenerWhen::lower;
    return {
        .name = "kind of reading " + kind.name,
        .about = {kind.words, kind.unit, is_lower ? "keener when lower" : "keener when higher"}};
  }
  Said operator()(const trials::KitStone& stone) const {
    return {.name = "stone " + stone.name, .about = {stone.abrasive, stone.grit, stone.note}};
  }
};

base::Problem refused(std::string sentence) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = std::move(sentence),
          .place = {.column = "revision"},
          .accepted = "a look at that first"};
}

// Each once; counted where they are more than a sentence holds.
std::string names_of(const Parts& all, const std::string& what_they_are) {
  constexpr std::size_t kMostNamed = 4;
  Parts names;
  for (const std::string& name : all) {
    if (std::ranges::find(names, name) == names.end()) names.push_back(name);
  }
  if (names.size() <= kMostNamed) return telling::listed(names);
  return std::to_string(names.size()) + " " + what_they_are;
}

std::string planned(const trials::Plan& plan) {
  Parts blades;
  for (const trials::PlannedArm& arm : plan.arms) blades.push_back(arm.blade);
  Parts media;
  for (const trials::PlannedCutting& cutting : plan.cuttings) media.push_back(cutting.medium.name);
  if (blades.empty() || media.empty()) return "nothing planned";
  return names_of(blades, "blades") + " in " + names_of(media, "media") + ", " +
         std::to_string(plan.runs_each) + (plan.runs_each == 1 ? " run" : " runs") + " of each";
}

}  // namespace

base::Problem changed_elsewhere(const notebook::KitThing& now) {
  const Said said = std::visit(Saying(), now);
  const std::string about = joined(said.about);
  return refused("The " + said.name + " was changed elsewhere meanwhile. It is now: " +
                 (about.empty() ? "its name alone" : about) + ".");
}

base::Problem asked_elsewhere(const std::string& trial,
                              const std::optional<notebook::KeptPlan>& now) {
  const std::string changed = "What is asked and planned in " + trial;
  if (!now) return refused(changed + " was taken back elsewhere meanwhile.");
  Parts claims;
  for (const trials::Claim& claim : now->claims) claims.push_back("“" + claim.words + "”");
  return refused(changed + " was changed elsewhere meanwhile. It is now: " +
                 (claims.empty() ? "nothing claimed" : joined(claims)) + "; " + planned(now->plan) +
                 ".");
}

}  // namespace keenfall::workbench
