#include "verdicts/arms_not_judged.h"

#include "base/require.h"
#include "verdicts/judge_lives.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <string>

namespace keenfall::verdicts {

namespace {

// "no readings of this kind (4 runs), voided: burr left (1 run)"
std::string reasons_counted(const Judgement& judgement,
                            const trials::Trial& trial,
                            const trials::Arm& arm) {
  std::map<std::string, int> runs_because;
  for (std::size_t r = 0; r < trial.runs.size(); ++r) {
    if (trial.runs[r].arm == arm) ++runs_because[judgement.runs[r].not_used_because];
  }
  std::string words;
  for (const auto& [because, runs] : runs_because) {
    words += (words.empty() ? "" : ", ") + because + " (" + std::to_string(runs) +
             (runs == 1 ? " run)" : " runs)");
  }
  return words;
}

// What was read or tested in another way only is shown where that is judged.
bool is_of_this_judgement(const trials::Run& run,
                          const trials::Trial& trial,
                          const Judgement& judgement) {
  if (run.readings.empty() && run.edge_lives.empty()) return true;
  if (judgement.kind.name == kEdgeLives) return !run.edge_lives.empty();
  return std::ranges::any_of(run.readings, [&](const trials::Reading& reading) {
    return trial.series.at(reading.series).kind.name == judgement.kind.name;
  });
}

}  // namespace

void set_aside_arms_not_judged(Judgement& judgement, const trials::Trial& trial) {
  base::require(judgement.runs.size() == trial.runs.size(), "one result for each run of the trial");
  for (const trials::Arm& arm : trials::arms_of(trial)) {
    if (std::ranges::count(judgement.arms, arm, &ArmResult::arm) > 0) continue;
    judgement.cannot_say.push_back("Nothing is said of " + arm.blade + " on " + arm.medium.name +
                                   ", since none of its runs could be used here: " +
                                   reasons_counted(judgement, trial, arm) + ".");
  }
  const auto rest = std::stable_partition(
      judgement.runs.begin(), judgement.runs.end(), [&](const RunResult& run) {
        return run.arm < judgement.arms.size();
      });
  std::copy_if(rest,
               judgement.runs.end(),
               std::back_inserter(judgement.runs_of_arms_not_judged),
               [&](const RunResult& run) {
                 return is_of_this_judgement(trial.runs[run.run], trial, judgement);
               });
  judgement.runs.erase(rest, judgement.runs.end());
}

}  // namespace keenfall::verdicts
