#include "materials/phases.h"

#include "materials/phase_table.h"
#include "materials/spelling.h"

#include <algorithm>
#include <iterator>
#include <string>

namespace keenfall::materials {

namespace {

double middle_hv(const Phase& phase) { return (phase.lo_hv + phase.hi_hv) / 2; }

const std::vector<Phase>& all_phases() {
  static const std::vector<Phase> phases = [] {
    std::vector<Phase> rows = phases_in_steel();
    std::ranges::move(minerals_and_abrasives(), std::back_inserter(rows));
    std::ranges::stable_sort(rows, {}, middle_hv);
    return rows;
  }();
  return phases;
}

bool is_called(const Phase& phase, const std::string& folded_name) {
  return folded(phase.name) == folded_name ||
         std::ranges::any_of(phase.same, [&folded_name](std::string_view other) {
           return folded(other) == folded_name;
         });
}

base::Problem unknown_phase(std::string_view name) {
  std::vector<std::string_view> names;
  for (const Phase& phase : all_phases()) {
    names.push_back(phase.name);
    names.insert(names.end(), phase.same.begin(), phase.same.end());
  }
  std::string accepted = did_you_mean(name, names);
  if (accepted.empty()) accepted = "a name that `keenfall phases` lists";
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "“" + std::string(name) +
                      "” is not in the table of carbides, nitrides, minerals and abrasives",
          .place = {.found = std::string(name)},
          .accepted = accepted};
}

}  // namespace

std::string_view in_words(PhaseKind kind) {
  switch (kind) {
    case PhaseKind::carbide:
      return "carbide";
    case PhaseKind::nitride:
      return "nitride";
    case PhaseKind::mineral:
      return "mineral";
    case PhaseKind::filler:
      return "filler";
    case PhaseKind::abrasive:
      return "abrasive";
  }
  return "";
}

std::span<const Phase> known_phases() { return all_phases(); }

base::Result<Phase> find_phase(std::string_view name) {
  const std::string wanted = folded(name);
  for (const Phase& phase : all_phases()) {
    if (!wanted.empty() && is_called(phase, wanted)) return phase;
  }
  return base::failed(unknown_phase(name));
}

std::string_view in_words(Scratching scratching) {
  switch (scratching) {
    case Scratching::yes:
      return "yes";
    case Scratching::in_part:
      return "in part";
    case Scratching::no:
      return "no";
  }
  return "";
}

HardnessSpan hardness_span(const Phase& phase) { return {phase.lo_hv, phase.hi_hv}; }

Scratching scratches(const HardnessSpan& hard, const HardnessSpan& soft) {
  if (hard.lo_hv >= kScratchingHardnessRatio * soft.hi_hv) return Scratching::yes;
  if (hard.hi_hv < kScratchingHardnessRatio * soft.lo_hv) return Scratching::no;
  return Scratching::in_part;
}

}  // namespace keenfall::materials
