#include "telling/noticed_in_the_runs.h"

#include "telling/arm_groups.h"
#include "telling/struck_and_doubtful.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <map>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::telling {

namespace {

using verdicts::Comparison;
using verdicts::Judgement;

std::string run_name(const Judgement& judgement,
                     const verdicts::RunResult& run,
                     const std::vector<ArmName>& names) {
  const auto& medium = judgement.arms[run.arm].arm.medium.name;
  return fmt::format("Run {} of {} on {}", run.name, names[run.arm].name, medium);
}

// What was noticed in one run names it; what was noticed in several is said once, at the end.
std::vector<std::string> remarks_on_runs(const Judgement& judgement,
                                         const std::vector<ArmName>& names) {
  std::map<std::string, int> runs_with;
  for (const verdicts::RunResult& run : judgement.runs) {
    for (const std::string& remark : run.remarks) ++runs_with[remark];
  }
  std::vector<std::string> remarks;
  for (const verdicts::RunResult& run : judgement.runs) {
    std::string own;
    for (const std::string& remark : run.remarks) {
      if (runs_with[remark] == 1) own += (own.empty() ? "" : "; ") + remark;
    }
    if (!own.empty()) remarks.push_back(run_name(judgement, run, names) + ": " + own);
  }
  for (const auto& [remark, runs] : runs_with) {
    if (runs > 1) remarks.push_back(fmt::format("{} runs: {}", runs, remark));
  }
  return remarks;
}

// What is remarked on some pairs of a medium only; the rest stands below the answers.
std::vector<std::string> remarks_on_pairs(const Judgement& judgement,
                                          const std::vector<ArmName>& names) {
  std::vector<std::string> remarks;
  for (const ArmGroup& group : groups_of(judgement)) {
    const std::vector<std::string> said = remarks_on_all(judgement, group);
    for (const std::size_t index : group.comparisons) {
      const Comparison& comparison = judgement.comparisons[index];
      for (const std::string& remark : comparison.remarks) {
        if (std::ranges::count(said, remark) > 0) continue;
        const std::string told = pair_name(comparison, names) + ": " + remark;
        if (std::ranges::count(remarks, told) == 0) remarks.push_back(told);
      }
    }
  }
  return remarks;
}

}  // namespace

std::optional<Section> noticed_in_the_runs(const Judgement& judgement) {
  const std::vector<ArmName> names = names_of(judgement);
  std::vector<std::string> items;
  for (const verdicts::RunResult& run : judgement.runs) {
    if (!run.not_used_because.empty()) {
      items.push_back(run_name(judgement, run, names) + " is not used: " + run.not_used_because);
    }
  }
  for (std::string& item : struck_and_doubtful(judgement, names)) {
    items.push_back(std::move(item));
  }
  for (const std::string& remark : remarks_on_runs(judgement, names)) items.push_back(remark);
  for (const std::string& remark : remarks_on_pairs(judgement, names)) items.push_back(remark);
  if (items.empty()) return std::nullopt;
  return Section{.id = "noticed", .heading = "Noticed in the runs", .items = all_plain(items)};
}

}  // namespace keenfall::telling
