// The app's first page: every trial of the open notebook with where it stands, what comes next and
// its newest answer, and what undo would take back.
//
// An answer that was stored is told at once; where none is, the quick engine gives one. Fails and
// throws as trials_at_hand.h does.
#pragma once

#include "base/result.h"
#include "wire/home.h"
#include "workbench/judged_now.h"

#include <string>

namespace keenfall::workbench {

[[nodiscard]] base::Result<wire::Home> home_of(AtHand& at_hand, const std::string& notebook);

// The stored answer, or a quick one: of_now, with no time. Of a trial that is long to judge the
// stored one, or none.
[[nodiscard]] base::ResultOrProblems<wire::Answer> newest_answer(AtHand& at_hand,
                                                                 const TrialToJudge& asked);

// Where the trial stands.
[[nodiscard]] wire::Path path_of(const TrialAtHand& trial);

}  // namespace keenfall::workbench
