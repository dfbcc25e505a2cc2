// Judging a trial of the open notebook for the app: quickly while a person looks, fully as long
// work, and again for another margin, level or claim from the draws at hand.
//
// Only the full answer to the trial's own question (its claim's margin, else the usual, and nothing
// else changed) is stored and counted as a look, once for each state of its readings. With struck
// readings counted, as if they were not struck, nothing is stored either. Fails as judge_tables.h
// does; throws NotebookTrouble where the notebook is damaged.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "wire/judged.h"
#include "workbench/counted_look.h"
#include "workbench/fits_at_hand.h"
#include "workbench/scatters_at_hand.h"
#include "workbench/trials_at_hand.h"

#include <cstddef>
#include <optional>
#include <string>

namespace keenfall::workbench {

struct TrialToJudge {
  std::string notebook;  // its path
  std::string uid;
  wire::Question question;
  JudgedBy by;
  materials::ToldIn told_in = {};  // the answer; what is stored of it is told as recorded
};

// What is kept in memory between requests.
struct AtHand {
  TrialsAtHand trials;
  FitsAtHand fits;
  ScattersAtHand scatters;
};

// Does even a first look at a trial with so many runs take so long that a person would wait? Of a
// thousand runs it takes two seconds, most of it to judge and tell each run.
inline constexpr std::size_t kMostRunsJudgedAtOnce = 60;
[[nodiscard]] bool is_long_to_judge(const trials::Trial& trial);

// Without sampling, at once. It tells its progress, and can be stopped, between its steps.
[[nodiscard]] base::ResultOrProblems<wire::Judged> judge_quickly(
    AtHand& at_hand, const TrialToJudge& asked, const base::ProgressReport& progress);

// From full draws of the trial as it is; nothing where there are none at hand.
[[nodiscard]] base::ResultOrProblems<std::optional<wire::Judged>> judge_again(
    AtHand& at_hand, const TrialToJudge& asked);

// By sampling, unless draws are at hand. The whole notebook is checked first.
[[nodiscard]] base::ResultOrProblems<wire::Judged> judge_fully(
    AtHand& at_hand,
    const TrialToJudge& asked,
    const base::Executor& executor,
    const base::ProgressReport& progress);

}  // namespace keenfall::workbench
