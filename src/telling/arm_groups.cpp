#include "telling/arm_groups.h"

#include <algorithm>
#include <set>
#include <string_view>

namespace keenfall::telling {

namespace {

using trials::Arm;
using verdicts::Judgement;

// Characters of UTF-8: all bytes but those that carry one on.
std::ptrdiff_t characters_of(std::string_view text) {
  return std::ranges::count_if(
      text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; });
}

bool share_a_group(const Arm& a, const Arm& b) {
  return a.medium == b.medium && a.method == b.method;
}

// The medium, with its condition and method where another arm has the medium in another way.
std::string medium_words_of(const Judgement& judgement, const Arm& arm) {
  std::string words = arm.medium.name;
  if (!arm.medium.condition.empty()) words += ", " + arm.medium.condition;
  const bool another_method = std::ranges::any_of(judgement.arms, [&arm](const auto& other) {
    return other.arm.medium == arm.medium && other.arm.method != arm.method;
  });
  if (another_method) {
    const std::string method = in_words(arm.method, judgement.told_in);
    words += ", " + (method.empty() ? "method not recorded" : method);
  }
  return words;
}

// What of this edge differs between the arms of one blade; the whole edge where what differs is not
// recorded of this one.
std::string telling_edge_words(const std::vector<const Arm*>& same_blade,
                               const Arm& arm,
                               const materials::ToldIn& told) {
  trials::EdgePreparation telling;
  const auto differs = [&](auto field) {
    return std::ranges::any_of(
        same_blade, [&](const Arm* other) { return other->edge.*field != arm.edge.*field; });
  };
  using Edge = trials::EdgePreparation;
  if (differs(&Edge::bevel_angle)) telling.bevel_angle = arm.edge.bevel_angle;
  if (differs(&Edge::apex_angle)) telling.apex_angle = arm.edge.apex_angle;
  if (differs(&Edge::finish)) telling.finish = arm.edge.finish;
  if (differs(&Edge::thickness_behind_edge_mm)) {
    telling.thickness_behind_edge_mm = arm.edge.thickness_behind_edge_mm;
  }
  if (const std::string words = in_words(telling, told); !words.empty()) return words;
  const std::string whole = in_words(arm.edge, told);
  return whole.empty() ? "edge not recorded" : whole;
}

std::string name_in_group(const Judgement& judgement, const ArmGroup& group, std::size_t index) {
  const Arm& arm = judgement.arms[index].arm;
  std::vector<const Arm*> same_blade;
  for (const std::size_t other : group.arms) {
    if (judgement.arms[other].arm.blade == arm.blade) {
      same_blade.push_back(&judgement.arms[other].arm);
    }
  }
  if (same_blade.size() == 1) return arm.blade;
  return arm.blade + " (" + telling_edge_words(same_blade, arm, judgement.told_in) + ")";
}

void sort_by_falling_ratio(const Judgement& judgement, std::vector<std::size_t>& comparisons) {
  std::ranges::stable_sort(comparisons, [&judgement](std::size_t left, std::size_t right) {
    return judgement.comparisons[left].ratio.median > judgement.comparisons[right].ratio.median;
  });
}

}  // namespace

std::vector<ArmGroup> groups_of(const Judgement& judgement) {
  std::vector<ArmGroup> groups;
  for (std::size_t index = 0; index < judgement.arms.size(); ++index) {
    const Arm& arm = judgement.arms[index].arm;
    auto group = std::ranges::find_if(groups, [&](const ArmGroup& candidate) {
      return share_a_group(judgement.arms[candidate.arms.front()].arm, arm);
    });
    if (group == groups.end()) {
      groups.push_back({.medium_words = medium_words_of(judgement, arm)});
      group = groups.end() - 1;
    }
    group->arms.push_back(index);
  }
  for (ArmGroup& group : groups) {
    for (std::size_t i = 0; i < judgement.comparisons.size(); ++i) {
      if (std::ranges::count(group.arms, judgement.comparisons[i].a) > 0) {
        group.comparisons.push_back(i);
      }
    }
    sort_by_falling_ratio(judgement, group.comparisons);
  }
  return groups;
}

std::vector<std::string> remarks_on_all(const Judgement& judgement, const ArmGroup& group) {
  if (group.comparisons.empty()) return {};
  std::vector<std::string> remarks = judgement.comparisons[group.comparisons.front()].remarks;
  std::erase_if(remarks, [&](const std::string& remark) {
    return !std::ranges::all_of(group.comparisons, [&](std::size_t index) {
      return std::ranges::count(judgement.comparisons[index].remarks, remark) > 0;
    });
  });
  return remarks;
}

std::vector<ArmName> names_of(const Judgement& judgement) {
  std::vector<ArmName> names(judgement.arms.size());
  constexpr std::ptrdiff_t kLabelCharacters = 9;
  bool names_can_be_labels = true;
  const std::vector<ArmGroup> groups = groups_of(judgement);
  for (const ArmGroup& group : groups) {
    std::set<std::string> seen;
    for (const std::size_t arm : group.arms) {
      names[arm].name = name_in_group(judgement, group, arm);
      const bool is_new = seen.insert(names[arm].name).second;
      if (!is_new || characters_of(names[arm].name) > kLabelCharacters) names_can_be_labels = false;
    }
  }
  // One number per name, the same in every medium.
  std::vector<std::string> numbered;
  for (ArmName& name : names) {
    auto known = std::ranges::find(numbered, name.name);
    if (known == numbered.end()) known = numbered.insert(numbered.end(), name.name);
    const auto number = static_cast<std::size_t>(known - numbered.begin()) + 1;
    name.label = names_can_be_labels ? name.name : std::to_string(number);
  }
  return names;
}

std::string pair_name(const verdicts::Comparison& comparison, const std::vector<ArmName>& names) {
  return names[comparison.a].name + " against " + names[comparison.b].name;
}

bool labels_need_a_key(const std::vector<ArmName>& names) {
  return std::ranges::any_of(names, [](const ArmName& arm) { return arm.label != arm.name; });
}

}  // namespace keenfall::telling
