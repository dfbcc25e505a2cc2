// How the arms of a judgement are named and grouped when they are shown.
//
// A group is what may be compared: one medium cut by one method. Within a group an arm goes by its
// blade's name; where several arms share a blade, by what else tells them apart.
#pragma once

#include "verdicts/judgement.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::telling {

struct ArmGroup {
  std::string medium_words;              // "new matting", "rope, wet, push cut of 30 mm"
  std::vector<std::size_t> arms;         // indices into Judgement::arms
  std::vector<std::size_t> comparisons;  // by falling ratio
};

// In order of first appearance.
[[nodiscard]] std::vector<ArmGroup> groups_of(const verdicts::Judgement& judgement);

// What is remarked on every comparison of the group.
[[nodiscard]] std::vector<std::string> remarks_on_all(const verdicts::Judgement& judgement,
                                                      const ArmGroup& group);

struct ArmName {
  std::string name;   // "C", "C (15° per side)"
  std::string label;  // short: "C", or "3" where names are long; a name has one in all groups
};

// One for each arm of the judgement.
[[nodiscard]] std::vector<ArmName> names_of(const verdicts::Judgement& judgement);

// "C against A".
[[nodiscard]] std::string pair_name(const verdicts::Comparison& comparison,
                                    const std::vector<ArmName>& names);

// True when the labels are numbers that need a key beside them.
[[nodiscard]] bool labels_need_a_key(const std::vector<ArmName>& names);

}  // namespace keenfall::telling
