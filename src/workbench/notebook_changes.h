// The jobs that change a notebook: making it, taking tables in, striking, undoing.
//
// Each opens the notebook, makes one change and closes it. Fails with a Problem where the notebook
// cannot be opened or what is asked does not fit what it holds; then nothing has changed. Throws
// NotebookTrouble where the machine fails.
#pragma once

#include "base/result.h"
#include "exchange/good_rows.h"
#include "exchange/table_options.h"
#include "notebook/kept_trials.h"
#include "notebook/notebook.h"
#include "notebook/strike.h"
#include "trials/trial.h"
#include "workbench/notebook_opening.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::workbench {

// made_by: "keenfall 0.1.0". Out: the path.
[[nodiscard]] base::Result<std::string> new_notebook(const std::string& path,
                                                     const std::string& made_by,
                                                     const Hand& hand);

struct TakeRequest {
  std::string notebook;
  std::vector<std::string> tables;
  std::string trial;  // empty: named after the first table
  exchange::TableOptions options;
  bool keeps_good = false;  // bad rows are left out, the others taken
};

struct TakenIn {
  std::string trial;
  notebook::Taken taken;
  std::vector<std::string> remarks;  // what was noticed while reading the tables
  exchange::LeftOut left_out;        // the trial has its remarks, too
};

// Every problem of the tables at once, and then nothing is taken, unless the good rows are to be.
[[nodiscard]] base::ResultOrProblems<TakenIn> take_into(const TakeRequest& request,
                                                        const Hand& hand);

// A trial that was made and not read from tables, such as a simulated one, under its own name.
// Refused where the notebook has a trial of that name: made runs are not added to others.
// `made_from` stands in the log where tables' names do.
struct MadeTrial {
  std::string notebook;
  trials::Trial trial;
  std::string made_from;  // "simulated, seed 7"
};
[[nodiscard]] base::ResultOrProblems<TakenIn> take_made(MadeTrial made, const Hand& hand);

// Why a made trial is refused under that name; also for whoever looks before it is made.
[[nodiscard]] base::Problem made_trial_is_there(const std::string& trial,
                                                const std::string& notebook);

// Where the request names no trial, it is the notebook's only one.
[[nodiscard]] base::Result<notebook::Struck> strike_in(const std::string& path,
                                                       notebook::StrikeRequest request,
                                                       const Hand& hand);

// entry absent: the last that still holds and undoes nothing.
[[nodiscard]] base::Result<notebook::JournalEntry> undo_in(const std::string& path,
                                                           std::optional<std::int64_t> entry,
                                                           const Hand& hand);

}  // namespace keenfall::workbench
