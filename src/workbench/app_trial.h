// One trial of the open notebook as the app's pages show it: as it was recorded, where it stands,
// who looked at it and what was done otherwise than planned. Striking in it, by places.
//
// Fails and throws as trials_at_hand.h and notebook_changes.h do.
#pragma once

#include "base/result.h"
#include "wire/app_pages.h"
#include "wire/app_requests.h"
#include "workbench/app_asking.h"
#include "workbench/judged_now.h"
#include "workbench/notebook_opening.h"

#include <string>

namespace keenfall::workbench {

[[nodiscard]] base::Result<wire::TrialPage> trial_page(AtHand& at_hand,
                                                       const TrialMeant& named,
                                                       const materials::ToldIn& told_in);

// Refused where the trial has changed since the entry that the page read it at, if it says which:
// its places may be others now.
struct StrikeInTrial {
  std::string notebook;
  std::string uid;
  wire::Strike strike;
};

[[nodiscard]] base::Result<wire::Changed> strike_in_trial(const StrikeInTrial& request,
                                                          const Hand& hand);

}  // namespace keenfall::workbench
