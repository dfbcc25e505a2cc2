// What is asked and planned in a trial of the open notebook: a trial that begins with a question,
// its draft written down, claim and plan sealed with the time, the trial called otherwise.
//
// A draft may lack what it will; sealing is refused with all that the plan lacks
// (planning/plan_flaws.h). A plan with one arm compares nothing and is taken as one that measures
// how much one's own runs scatter. A draft that was changed since it was looked at is neither
// written over nor sealed (changed_elsewhere.h). Each opens the notebook, makes one change and
// closes it; fails and throws as notebook_changes.h does.
#pragma once

#include "base/result.h"
#include "notebook/plans.h"
#include "trials/kit.h"
#include "wire/app_pages.h"
#include "wire/asked_json.h"
#include "workbench/notebook_opening.h"

#include <optional>
#include <string>

namespace keenfall::workbench {

struct NamedTrial {
  std::string notebook;
  std::string name;
};

// A trial of that name without a run. Out: its uid.
[[nodiscard]] base::Result<std::string> begin_trial(const NamedTrial& trial,
                                                    const notebook::Asked& asked,
                                                    const Hand& hand);

struct TrialMeant {
  std::string notebook;
  std::string uid;
};

// In place of the draft. Out: the trial's name.
[[nodiscard]] base::Result<std::string> write_asked(const TrialMeant& trial,
                                                    const wire::AskedToWrite& written,
                                                    const Hand& hand);

// At hand.at_utc. revision: of what is meant to be sealed; absent: what is kept. Out: the trial's
// name.
[[nodiscard]] base::ResultOrProblems<std::string> seal_asked(
    const TrialMeant& trial, const std::optional<std::string>& revision, const Hand& hand);

// Where it is called so already, entry 0.
[[nodiscard]] base::Result<wire::Changed> call_trial(const TrialMeant& trial,
                                                     const std::string& name,
                                                     const Hand& hand);

// As a page shows it: of a draft also what it lacks, and where that is nothing what is unwise.
[[nodiscard]] wire::AskedTold asked_told(const notebook::KeptPlan& plan, const trials::Kit& kit);

}  // namespace keenfall::workbench
