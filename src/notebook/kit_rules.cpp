#include "notebook/kit_rules.h"

#include "base/plain_number.h"
#include "notebook/kit_shelf.h"

#include <algorithm>
#include <cmath>
#include <string_view>

namespace keenfall::notebook {

namespace {

using Wrong = std::optional<base::Problem>;

base::Problem wrong(const std::string& sentence, const std::string& accepted) {
  return {.kind = base::ProblemKind::bad_value, .sentence = sentence, .accepted = accepted};
}

base::Problem wrong_in(const std::string& field,
                       const std::string& sentence,
                       const std::string& accepted) {
  base::Problem problem = wrong(sentence, accepted);
  problem.place = {.column = field};
  return problem;
}

Wrong wrong_name(const std::string& name, const std::string& what, const std::string& accepted) {
  if (!name.empty()) return std::nullopt;
  const std::string article = what.starts_with("edge") ? "An " : "A ";
  return wrong(article + what + " has no name.", accepted);
}

// `what`: "The length of the lot roll 7".
Wrong wrong_number(const std::string& what, const std::optional<double>& number, double above = 0) {
  if (!number || (std::isfinite(*number) && *number > above)) return std::nullopt;
  return wrong(what + " is " + base::plain_number(*number) + ", and must be above " +
                   base::plain_number(above) + ".",
               "a number above " + base::plain_number(above));
}

Wrong wrong_hardness(const std::string& whose, const std::optional<trials::Hardness>& hardness) {
  if (!hardness) return std::nullopt;
  if (auto found = wrong_number("The hardness of " + whose, hardness->reading)) return found;
  // The range of the scale in ISO 6508-1.
  constexpr double kSoftestHrc = 20;
  constexpr double kHardestHrc = 70;
  const bool is_off_scale = hardness->scale == trials::HardnessScale::rockwell_c &&
                            (hardness->reading < kSoftestHrc || hardness->reading > kHardestHrc);
  if (is_off_scale) {
    return wrong_in("hardness.reading",
                    "The hardness of " + whose + " is " + base::plain_number(hardness->reading) +
                        " HRC, and the C scale goes from 20 to 70.",
                    "20 to 70 HRC; what lies beyond, in HV");
  }
  return wrong_number("The error of the hardness of " + whose, hardness->error);
}

Wrong wrong_angle(const std::string& edge, const std::optional<trials::PerSideAngle>& angle) {
  constexpr double kRightAngleDeg = 90;
  if (!angle || (angle->deg > 0 && angle->deg < kRightAngleDeg)) return std::nullopt;
  return wrong("An angle of the edge " + edge + " is " + base::plain_number(angle->deg) +
                   "° per side, which no edge has.",
               "degrees per side, between 0 and 90");
}

// A micro-bevel stands steeper than the bevel that it ends.
Wrong wrong_micro_bevel(const trials::NamedEdge& edge) {
  const auto& bevel = edge.edge.bevel_angle;
  const auto& apex = edge.edge.apex_angle;
  if (!bevel || !apex || apex->deg >= bevel->deg) return std::nullopt;
  return wrong_in("edge.apex_angle_per_side_deg",
                  "The micro-bevel of the edge " + edge.name + " is " +
                      base::plain_number(apex->deg) + "° per side, below its bevel of " +
                      base::plain_number(bevel->deg) +
                      "°: a stone held lower than the bevel does not reach the apex.",
                  "an angle above that of the bevel, or the two the other way round");
}

struct FindWrong {
  Wrong operator()(const trials::Blade& blade) const {
    if (auto found = wrong_name(blade.name, "blade", "what it is called")) return found;
    if (auto found = wrong_hardness(blade.name, blade.hardness)) return found;
    for (const trials::Specimen& specimen : blade.specimens) {
      if (auto found = wrong_name(specimen.name, "specimen of " + blade.name, "how it is marked")) {
        return found;
      }
      if (std::ranges::count(blade.specimens, specimen.name, &trials::Specimen::name) > 1) {
        return wrong("Two specimens of " + blade.name + " are called " + specimen.name + ".",
                     "another name for each");
      }
      if (auto found = wrong_hardness(blade.name + " " + specimen.name, specimen.hardness)) {
        return found;
      }
    }
    return std::nullopt;
  }
  Wrong operator()(const trials::NamedEdge& edge) const {
    if (auto found = wrong_name(edge.name, "edge", "what it is called")) return found;
    if (auto found = wrong_angle(edge.name, edge.edge.bevel_angle)) return found;
    if (auto found = wrong_angle(edge.name, edge.edge.apex_angle)) return found;
    if (auto found = wrong_micro_bevel(edge)) return found;
    return wrong_number("The thickness behind the edge " + edge.name,
                        edge.edge.thickness_behind_edge_mm);
  }
  Wrong operator()(const trials::Medium& medium) const {
    return wrong_name(medium.name, "medium", "what is cut");
  }
  Wrong operator()(const trials::MediumLot& lot) const {
    if (auto found = wrong_name(lot.medium.name, "lot's medium", "what is cut")) return found;
    if (auto found = wrong_name(lot.name, "lot of " + lot.medium.name, "which batch it is")) {
      return found;
    }
    return wrong_number("The length of the lot " + lot.name, lot.length_m);
  }
  Wrong operator()(const trials::Thread& thread) const {
    if (auto found = wrong_name(thread.kind, "thread's kind of reading", "thread_push")) {
      return found;
    }
    return wrong_name(thread.name, "thread", "which it is: 0.25 mm polyester");
  }
  Wrong operator()(const trials::ReadingKind& kind) const {
    if (auto found = wrong_name(kind.name, "kind of reading", "how tables write it")) return found;
    if (trials::find_reading_kind(kind.name) != nullptr) {
      return wrong("Keenfall knows the kind of reading " + kind.name + " by itself.",
                   "another name for a kind of one's own");
    }
    constexpr double kStart = 1;
    if (auto found = wrong_number("The level of " + kind.name, kind.default_level, kStart)) {
      return found;
    }
    if (auto found = wrong_number("The smallest step of " + kind.name, kind.resolution)) {
      return found;
    }
    return wrong_number("The largest reading of " + kind.name, kind.largest);
  }
  Wrong operator()(const trials::KitStone& stone) const {
    if (auto found = wrong_name(stone.name, "stone", "what it is called")) return found;
    const bool is_bare = !stone.grit.empty() &&
                         stone.grit.find_first_not_of("0123456789.,# ") == std::string_view::npos;
    if (!is_bare) return std::nullopt;
    base::Problem bare = wrong("The grit " + stone.grit + " of the stone " + stone.name +
                                   " does not say its system: a bare 1000 is 4.5, 18 or 11.5 µm.",
                               "the grit with its system: FEPA-F 220, FEPA-P 220, JIS 1000, 9 µm");
    bare.place = {.column = "grit", .found = stone.grit};
    return bare;
  }
};

}  // namespace

std::optional<base::Problem> problem_of(const KitThing& thing) {
  return std::visit(FindWrong(), thing);
}

}  // namespace keenfall::notebook
