// Trials that were read from notebooks, kept in memory as long as the notebook's journal stands
// where it stood.
//
// Every request opens the notebook, so that a command beside the open app is seen at once; only
// what has not moved is not read again. Where the journal moved but the trial is as it was (a look
// was counted, a change was undone), the same trial is handed out, so that what hangs on it holds.
// Used from several threads. Fails with a Problem where the notebook cannot be opened or has no
// such trial; throws NotebookTrouble where it is damaged or the machine fails.
#pragma once

#include "base/result.h"
#include "notebook/looks.h"
#include "notebook/notebook.h"
#include "notebook/plans.h"
#include "telling/sentence.h"
#include "trials/trial.h"

#include <cstdint>
#include <list>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::workbench {

struct LookAtHand {
  std::string at_utc;
  std::string who;
  std::string question;
  notebook::JudgedInputs inputs;
  std::vector<telling::Sentence> headline;  // of the answer; none of looks by an older program
};

struct TrialAtHand {
  std::string notebook;  // its path
  std::string uid;
  notebook::JournalPlace place;  // when it was read
  std::shared_ptr<const trials::Trial> trial;
  notebook::JudgedInputs inputs;            // as a judging of it would see them
  std::vector<LookAtHand> looks;            // in the order they were made
  std::optional<notebook::KeptPlan> asked;  // what was asked and planned
};

// Of an uid that no trial of the notebook has.
[[nodiscard]] base::Problem no_trial_with(const std::string& uid, const std::string& path);

class TrialsAtHand {
 public:
  [[nodiscard]] base::Result<std::shared_ptr<const TrialAtHand>> trial(const std::string& path,
                                                                       const std::string& uid);
  // The same after the whole notebook was checked, so that nothing judged or handed out rests on
  // damage.
  [[nodiscard]] base::Result<std::shared_ptr<const TrialAtHand>> checked_trial(
      const std::string& path, const std::string& uid);
  // Of a notebook that is open already.
  [[nodiscard]] base::Result<std::shared_ptr<const TrialAtHand>> trial_of(
      const notebook::Notebook& opened, const std::string& uid);

 private:
  [[nodiscard]] std::shared_ptr<const TrialAtHand> known(const std::string& path,
                                                         const std::string& uid);
  // As it was read before, the newest first.
  [[nodiscard]] std::vector<std::shared_ptr<const TrialAtHand>> versions(const std::string& path,
                                                                         const std::string& uid);
  void keep(std::shared_ptr<const TrialAtHand> read);

  std::mutex mutex_;
  // The one used last stands first, and of one trial the newest.
  std::list<std::shared_ptr<const TrialAtHand>> kept_;
};

}  // namespace keenfall::workbench
