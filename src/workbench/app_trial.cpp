#include "workbench/app_trial.h"

#include "exchange/long_table_text.h"
#include "notebook/kept_trials.h"
#include "notebook/kit.h"
#include "notebook/looks.h"
#include "notebook/strike.h"
#include "notebook/trial_words.h"
#include "workbench/app_home.h"
#include "workbench/plan_followed.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace keenfall::workbench {

namespace {

std::string so_many_words(std::size_t count, const std::string& one) {
  return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

wire::SeenLook seen_look(const LookAtHand& look) {
  return {.at_utc = look.at_utc,
          .who = look.who,
          .words = "saw " + so_many_words(look.inputs.runs, "run") + " with " +
                   so_many_words(look.inputs.readings, "reading")};
}

// From the sealed plan as a whole, then as they were recorded run by run; each says which it was.
std::vector<std::string> deviations_in(const TrialAtHand& seen, const materials::ToldIn& told) {
  std::vector<std::string> deviations;
  // A trial that is not cut yet has departed from nothing.
  if (seen.asked && !seen.trial->runs.empty()) {
    deviations = deviations_from(*seen.asked, *seen.trial, told);
  }
  for (const trials::Run& run : seen.trial->runs) {
    for (const std::string& deviation : run.deviations) {
      deviations.push_back(notebook::words_of(run) + ": " + deviation);
    }
  }
  return deviations;
}

base::Problem changed_meanwhile(const std::string& notebook) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence =
              "The notebook has changed since this page was read, so what was meant may be "
              "another reading now. Nothing was struck out.",
          .place = {.file = notebook},
          .accepted = "looking at the trial again, and then striking out"};
}

base::Problem no_reason(const std::string& reason) {
  return {.kind = base::ProblemKind::bad_value,
          .sentence = "\"" + reason +
                      "\" is no reason: a table that says so there means that nothing is struck "
                      "out, or does not say why.",
          .place = {.column = "reason", .found = reason},
          .accepted = "why it does not count, in words: the thread slipped"};
}

}  // namespace

base::Result<wire::TrialPage> trial_page(AtHand& at_hand,
                                         const TrialMeant& named,
                                         const materials::ToldIn& told_in) {
  return naming_the_file(named.notebook, [&]() -> base::Result<wire::TrialPage> {
    const auto opened = opened_to_read(named.notebook);
    if (!opened) return base::failed(opened.error());
    const notebook::OneMoment moment(*opened);
    const auto seen = at_hand.trials.trial_of(*opened, named.uid);
    if (!seen) return base::failed(seen.error());
    const TrialAtHand& trial = **seen;
    wire::TrialPage page{.uid = named.uid,
                         .last_entry = trial.place.entry,
                         .path = path_of(trial),
                         .trial = *trial.trial,
                         .told_in = told_in,
                         .deviations = deviations_in(trial, told_in)};
    if (trial.asked) {
      page.asked = asked_told(*trial.asked, things_of(notebook::kept_kit(*opened)));
      page.asked->sealing = notebook::sealing_of(*opened, trial.trial->name);
    }
    if (trial.asked && trial.asked->sealed_at_utc) {
      page.to_cut = planning::runs_to_cut(trial.asked->plan, *trial.trial);
    }
    for (const LookAtHand& look : trial.looks) page.looks.push_back(seen_look(look));
    return page;
  });
}

base::Result<wire::Changed> strike_in_trial(const StrikeInTrial& request, const Hand& hand) {
  using Outcome = base::Result<wire::Changed>;
  return naming_the_file(request.notebook, [&]() -> Outcome {
    if (!exchange::is_reason_in_tables(request.strike.reason)) {
      return base::failed(no_reason(request.strike.reason));
    }
    auto opened = opened_whole_to_write(request.notebook, hand, Checked::if_small);
    if (!opened) return base::failed(opened.error());
    const auto name = notebook::trial_name_of(*opened, request.uid);
    if (!name) return base::failed(no_trial_with(request.uid, request.notebook));
    if (request.strike.of_entry && notebook::has_changed_since(*opened, *request.strike.of_entry)) {
      return base::failed(changed_meanwhile(request.notebook));
    }
    std::optional<notebook::CorrectedReading> instead;
    if (request.strike.instead) {
      instead = {.reading = *request.strike.instead, .unit = request.strike.unit};
    }
    const auto struck = notebook::strike_at(*opened,
                                            {.trial = *name,
                                             .run = request.strike.run,
                                             .reading = request.strike.reading,
                                             .cuts = request.strike.cuts,
                                             .reason = request.strike.reason,
                                             .instead = instead},
                                            authorship_of(hand));
    if (!struck) return base::failed(struck.error());
    return wire::Changed{.entry = struck->entry.entry,
                         .last_entry = struck->entry.entry,
                         .what = struck->entry.what};
  });
}

}  // namespace keenfall::workbench
