// The jobs that only look into a notebook: its trials, its journal, whether it is whole, a copy.
//
// None needs the right to write to it. Fails with a Problem where the notebook cannot be opened or
// has no such trial; throws NotebookTrouble where it is damaged or the machine fails.
#pragma once

#include "base/result.h"
#include "notebook/kept_trials.h"
#include "notebook/looks.h"
#include "notebook/notebook.h"
#include "notebook/plans.h"
#include "trials/trial.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::workbench {

// The trial of that name, or the only one where the name is empty; a Problem that lists what there
// is otherwise.
[[nodiscard]] base::Result<std::string> trial_meant(const notebook::Notebook& notebook,
                                                    const std::string& name);

[[nodiscard]] base::Result<std::vector<notebook::KeptTrial>> trials_in(const std::string& path);
struct TrialWithLooks {
  trials::Trial trial;
  std::vector<notebook::Look> looks;            // in the order they were made
  std::int64_t last_entry = 0;                  // of the journal, when it was read
  std::optional<notebook::KeptPlan> plan = {};  // what is asked and planned, where it has that
};

// name empty: the only one.
[[nodiscard]] base::Result<TrialWithLooks> trial_in(const std::string& path,
                                                    const std::string& name);
// The same after the whole notebook was checked, so that nothing judged or handed out rests on
// damage.
[[nodiscard]] base::Result<TrialWithLooks> checked_trial_in(const std::string& path,
                                                            const std::string& name);
[[nodiscard]] base::Result<std::vector<notebook::JournalEntry>> journal_in(const std::string& path);

struct CheckedNotebook {
  std::vector<std::string> findings;  // empty: as it was written
  std::size_t trials = 0;             // what was looked at; zeros where something was found
  std::size_t runs = 0;
  std::size_t readings = 0;
  std::size_t entries = 0;
};

// Damage is a finding here, never thrown.
[[nodiscard]] base::Result<CheckedNotebook> check_notebook(const std::string& path);

struct BackedUp {
  std::string path;          // of the copy
  std::size_t findings = 0;  // in the copy, which is as damaged as the notebook
};

[[nodiscard]] base::Result<BackedUp> back_up_notebook(const std::string& path,
                                                      const std::string& copy_path);

}  // namespace keenfall::workbench
