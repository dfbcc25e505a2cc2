#include "workbench/app_asking.h"

#include "notebook/kept_trials.h"
#include "notebook/kit.h"
#include "planning/advice.h"
#include "planning/assumptions.h"
#include "planning/plan_flaws.h"
#include "wire/revisions.h"
#include "workbench/changed_elsewhere.h"
#include "workbench/trials_at_hand.h"

#include <optional>
#include <utility>
#include <vector>

namespace keenfall::workbench {

namespace {

using Problems = std::vector<base::Problem>;

// Problems of the notebook's own name no file.
base::Problem of_notebook(base::Problem problem, const std::string& path) {
  if (problem.place.file.empty()) problem.place.file = path;
  return problem;
}

Problems flaws_of(const notebook::KeptPlan& kept, const trials::Kit& kit) {
  return planning::plan_flaws(kept.plan, kept.claims, kit, planning::purpose_of(kept.plan));
}

struct OpenedTrial {
  notebook::Notebook opened;
  std::string name;
};

base::Result<OpenedTrial> opened_to_change(const TrialMeant& trial, const Hand& hand) {
  auto opened = opened_whole_to_write(trial.notebook, hand, Checked::if_small);
  if (!opened) return base::failed(opened.error());
  auto name = notebook::trial_name_of(*opened, trial.uid);
  if (!name) return base::failed(no_trial_with(trial.uid, trial.notebook));
  return OpenedTrial{.opened = std::move(*opened), .name = std::move(*name)};
}

Problems refused_by(base::Problem problem, const std::string& path) {
  return {of_notebook(std::move(problem), path)};
}

std::string revision_of(const std::optional<notebook::KeptPlan>& kept) {
  if (!kept) return std::string(wire::kNothingAsked);
  return wire::revision_of(notebook::Asked{.claims = kept->claims, .plan = kept->plan});
}

}  // namespace

base::Result<std::string> begin_trial(const NamedTrial& trial,
                                      const notebook::Asked& asked,
                                      const Hand& hand) {
  return naming_the_file(trial.notebook, [&]() -> base::Result<std::string> {
    auto opened = opened_whole_to_write(trial.notebook, hand, Checked::if_small);
    if (!opened) return base::failed(opened.error());
    const auto made = notebook::make_trial(*opened, trial.name, asked, authorship_of(hand));
    if (!made) return base::failed(of_notebook(made.error(), trial.notebook));
    return *notebook::trial_uid_of(*opened, trial.name);
  });
}

base::Result<std::string> write_asked(const TrialMeant& trial,
                                      const wire::AskedToWrite& written,
                                      const Hand& hand) {
  return naming_the_file(trial.notebook, [&]() -> base::Result<std::string> {
    auto meant = opened_to_change(trial, hand);
    if (!meant) return base::failed(meant.error());
    const auto kept = notebook::kept_plan(meant->opened, meant->name);
    const std::string revision = revision_of(kept);
    const bool was_seen =
        revision == written.revision || revision == wire::revision_of(written.asked);
    // Of one that is sealed is said that it is.
    if (!was_seen && !(kept && kept->sealed_at_utc)) {
      return base::failed(asked_elsewhere(meant->name, kept));
    }
    const auto changed =
        notebook::change_asked(meant->opened, meant->name, written.asked, authorship_of(hand));
    if (!changed) return base::failed(of_notebook(changed.error(), trial.notebook));
    return std::move(meant->name);
  });
}

base::ResultOrProblems<std::string> seal_asked(const TrialMeant& trial,
                                               const std::optional<std::string>& revision,
                                               const Hand& hand) {
  using Outcome = base::ResultOrProblems<std::string>;
  return naming_the_file(trial.notebook, [&]() -> Outcome {
    auto meant = opened_to_change(trial, hand);
    if (!meant) return base::failed_by(meant.error());
    const auto kept = notebook::kept_plan(meant->opened, meant->name);
    if (kept && !kept->sealed_at_utc) {
      if (revision && revision_of(kept) != *revision) {
        return base::failed_by(asked_elsewhere(meant->name, kept));
      }
      const trials::Kit kit = things_of(notebook::kept_kit(meant->opened));
      Problems flaws = flaws_of(*kept, kit);
      if (!flaws.empty()) return tl::unexpected<Problems>(std::move(flaws));
    }
    const auto sealed = notebook::seal(meant->opened, meant->name, authorship_of(hand));
    if (!sealed) {
      return tl::unexpected<Problems>(refused_by(sealed.error(), trial.notebook));
    }
    return std::move(meant->name);
  });
}

base::Result<wire::Changed> call_trial(const TrialMeant& trial,
                                       const std::string& name,
                                       const Hand& hand) {
  return naming_the_file(trial.notebook, [&]() -> base::Result<wire::Changed> {
    auto meant = opened_to_change(trial, hand);
    if (!meant) return base::failed(meant.error());
    const auto renamed =
        notebook::rename_trial(meant->opened, meant->name, name, authorship_of(hand));
    if (!renamed) return base::failed(of_notebook(renamed.error(), trial.notebook));
    const std::int64_t last = meant->opened.last_place().entry;
    if (!*renamed) {
      return wire::Changed{.last_entry = last, .what = "the trial is called " + name + " already"};
    }
    return wire::Changed{.entry = (*renamed)->entry, .last_entry = last, .what = (*renamed)->what};
  });
}

wire::AskedTold asked_told(const notebook::KeptPlan& plan, const trials::Kit& kit) {
  wire::AskedTold told{
      .claims = plan.claims, .plan = plan.plan, .sealed_at_utc = plan.sealed_at_utc};
  if (plan.sealed_at_utc) return told;
  told.flaws = flaws_of(plan, kit);
  if (!told.flaws.empty()) return told;
  const planning::Assumptions assumptions = planning::usual_assumptions(plan.plan);
  for (planning::Advice& advice : planning::advice_on({.plan = plan.plan,
                                  .claims = plan.claims,
                                  .kit = kit,
                                  .assumptions = assumptions,
                                  .times = {}})) {
    told.advice.push_back(std::move(advice.sentence));
  }
  return told;
}

}  // namespace keenfall::workbench
