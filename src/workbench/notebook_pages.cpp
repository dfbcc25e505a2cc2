#include "workbench/notebook_pages.h"

#include "base/shell_word.h"
#include "notebook/check.h"
#include "notebook/notebook_failure.h"
#include "workbench/notebook_opening.h"

#include <algorithm>
#include <utility>

namespace keenfall::workbench {

namespace {

// A trial that was asked for by a word of the command line, which the column says.
base::Problem no_such_trial(const std::string& path,
                            const std::string& sentence,
                            const std::string& accepted) {
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = sentence,
          .place = {.file = path, .column = "--"},
          .accepted = accepted};
}

void count_what_is_there(const notebook::Notebook& notebook, CheckedNotebook& checked) {
  for (const notebook::KeptTrial& kept : notebook::kept_trials(notebook)) {
    ++checked.trials;
    checked.runs += kept.runs;
    checked.readings += kept.readings;
  }
  checked.entries = notebook.journal().size();
}

}  // namespace

base::Result<std::string> trial_meant(const notebook::Notebook& notebook, const std::string& name) {
  const std::vector<std::string> kept = notebook::trial_names(notebook);
  if (kept.empty()) {
    return base::failed(
        {.kind = base::ProblemKind::missing,
         .sentence = "The notebook holds no trial yet.",
         .place = {.file = notebook.path()},
         .accepted = "keenfall take " + base::shell_word(notebook.path()) + " TABLE puts one in"});
  }
  std::string names;
  for (const std::string& trial : kept) names += (names.empty() ? "" : ", ") + trial;
  if (name.empty()) {
    if (kept.size() == 1) return kept.front();
    return base::failed(no_such_trial(
        notebook.path(), "The notebook holds several trials; say which with --trial.", names));
  }
  if (std::ranges::count(kept, name) > 0) return name;
  return base::failed(
      no_such_trial(notebook.path(), "The notebook has no trial called \"" + name + "\".", names));
}

namespace {

base::Result<TrialWithLooks> trial_of(const notebook::Notebook& opened, const std::string& name) {
  const auto meant = trial_meant(opened, name);
  if (!meant) return base::failed(meant.error());
  auto trial = notebook::kept_trial(opened, *meant);
  if (!trial) return base::failed(trial.error());
  const auto journal = opened.journal();
  return TrialWithLooks{.trial = std::move(*trial),
                        .looks = notebook::looks_at(opened, *meant),
                        .last_entry = journal.empty() ? 0 : journal.back().entry,
                        .plan = notebook::kept_plan(opened, *meant)};
}

}  // namespace

base::Result<std::vector<notebook::KeptTrial>> trials_in(const std::string& path) {
  return naming_the_file(path, [&]() -> base::Result<std::vector<notebook::KeptTrial>> {
    const auto opened = opened_to_read(path);
    if (!opened) return base::failed(opened.error());
    return notebook::kept_trials(*opened);
  });
}

base::Result<TrialWithLooks> trial_in(const std::string& path, const std::string& name) {
  return naming_the_file(path, [&]() -> base::Result<TrialWithLooks> {
    const auto opened = opened_to_read(path);
    if (!opened) return base::failed(opened.error());
    const notebook::OneMoment moment(*opened);
    return trial_of(*opened, name);
  });
}

base::Result<TrialWithLooks> checked_trial_in(const std::string& path, const std::string& name) {
  return naming_the_file(path, [&]() -> base::Result<TrialWithLooks> {
    const auto opened = opened_to_read(path);
    if (!opened) return base::failed(opened.error());
    const notebook::OneMoment moment(*opened);
    refuse_damage(*opened);
    return trial_of(*opened, name);
  });
}

base::Result<std::vector<notebook::JournalEntry>> journal_in(const std::string& path) {
  return naming_the_file(path, [&]() -> base::Result<std::vector<notebook::JournalEntry>> {
    const auto opened = opened_to_read(path);
    if (!opened) return base::failed(opened.error());
    return opened->journal();
  });
}

base::Result<CheckedNotebook> check_notebook(const std::string& path) {
  CheckedNotebook checked;
  try {
    const auto opened = opened_to_read(path);
    if (!opened) return base::failed(opened.error());
    checked.findings = notebook::check(*opened);
    if (checked.findings.empty()) count_what_is_there(*opened, checked);
  } catch (const notebook::NotebookDamaged& damage) {
    checked.findings.push_back(std::string("The notebook cannot be opened: ") + damage.what() +
                               ".");
  } catch (const notebook::NotebookFailure& failure) {
    throw_as_trouble(path, failure);
  }
  return checked;
}

base::Result<BackedUp> back_up_notebook(const std::string& path, const std::string& copy_path) {
  return naming_the_file(path, [&]() -> base::Result<BackedUp> {
    const auto opened = opened_to_read(path);
    if (!opened) return base::failed(opened.error());
    const auto copy = opened->back_up_to(copy_path);
    if (!copy) return base::failed(copy.error());
    const auto checked = check_notebook(*copy);
    return BackedUp{.path = *copy, .findings = checked ? checked->findings.size() : 1};
  });
}

}  // namespace keenfall::workbench
