#include "blunting/inference/run_groups.h"

#include "trials/arm_order.h"

#include <algorithm>
#include <map>

namespace keenfall::blunting {

namespace {

using trials::Trial;

template <class T>
std::size_t place_of(std::vector<T>& values, const T& value) {
  const auto found = std::ranges::find(values, value);
  if (found != values.end()) return static_cast<std::size_t>(found - values.begin());
  values.push_back(value);
  return values.size() - 1;
}

std::string medium_with_method(const trials::Arm& arm) {
  std::string words = arm.medium.name;
  if (!arm.medium.condition.empty()) words += ", " + arm.medium.condition;
  const std::string method = in_words(arm.method);
  if (!method.empty()) words += ", " + method;
  return words;
}

// Puts the arms in their order and numbers the media they were cut in.
void list_arms(RunGroups& groups) {
  const std::vector<trials::Arm> as_met = groups.arms;
  std::ranges::sort(groups.arms, trials::listed_before);
  for (const trials::Arm& arm : groups.arms) {
    groups.medium_of_arm.push_back(place_of(groups.media, medium_with_method(arm)));
  }
  for (GroupsOfRun& run : groups.runs) {
    run.arm = place_of(groups.arms, as_met[run.arm]);
    run.medium = groups.medium_of_arm[run.arm];
  }
}

// Blocks tell something only where one block holds runs of several arms of a medium.
void number_blocks(RunGroups& groups, const Trial& trial, std::span<const std::size_t> used) {
  std::vector<std::string> names;
  std::map<std::string, std::vector<std::size_t>> arms_in;
  const auto name_of = [&](std::size_t r) {
    return trial.runs[used[r]].block + "\n" + groups.media[groups.runs[r].medium];
  };
  for (std::size_t r = 0; r < used.size(); ++r) {
    if (trial.runs[used[r]].block.empty()) continue;
    (void)place_of(arms_in[name_of(r)], groups.runs[r].arm);
  }
  for (std::size_t r = 0; r < used.size(); ++r) {
    if (trial.runs[used[r]].block.empty() || arms_in[name_of(r)].size() < 2) continue;
    groups.runs[r].block = place_of(names, name_of(r));
  }
  groups.block_count = names.size();
}

void number_specimens(RunGroups& groups, const Trial& trial, std::span<const std::size_t> used) {
  std::map<std::string, std::vector<std::string>> pieces_of;
  for (const std::size_t run : used) {
    (void)place_of(pieces_of[trial.runs[run].arm.blade], trial.runs[run].specimen);
  }
  const bool several =
      std::ranges::any_of(pieces_of, [](const auto& blade) { return blade.second.size() > 1; });
  if (!several) return;
  std::vector<std::string> names;
  for (std::size_t r = 0; r < used.size(); ++r) {
    const trials::Run& run = trial.runs[used[r]];
    groups.runs[r].specimen = place_of(names, run.arm.blade + "\n" + run.specimen);
  }
  groups.specimen_count = names.size();
}

}  // namespace

RunGroups group_runs(const Trial& trial, std::span<const std::size_t> used) {
  RunGroups groups;
  for (const std::size_t run : used) {
    groups.runs.push_back({.arm = place_of(groups.arms, trial.runs[run].arm)});
  }
  list_arms(groups);
  number_blocks(groups, trial, used);
  number_specimens(groups, trial, used);
  return groups;
}

}  // namespace keenfall::blunting
