// A trial into its rows: a new one, or what is new of one that is there. Private to the folder.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "notebook/kept_trials.h"
#include "notebook/kit_rows.h"
#include "notebook/trial_reader.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <functional>
#include <string>
#include <vector>

namespace keenfall::notebook {

// Where a trial comes from. Out of tables nothing has an identity: blades, media and runs are known
// by what they are called. Out of another notebook each has one, and is known by it first.
enum class TrialSource { tables, notebook };

struct TrialToWrite {
  TrialRows rows;  // identities only where it comes from a notebook
  std::vector<TakenTable> tables;
  TrialSource source = TrialSource::tables;
  // Where a run is recorded otherwise in both: is what is here to stand, and be remarked on?
  bool keeps_what_is_here = false;
  // Of another notebook's runs that are called like one here, and are not surely it:
  bool alike_runs_are_one = false;
  std::string apart;  // else what stands behind the other's name; empty: that is a problem
  // What is noticed of the trial as it is then; may be absent.
  std::function<std::vector<std::string>(const trials::Trial&)> remarks_on;
  base::ProgressReport progress = base::unwatched();  // told of runs; may stop
};

// How a remark on something that was not taken begins.
inline constexpr const char* kNotTaken = "Not taken: ";

struct WrittenTrial {
  Taken taken;
  std::vector<std::string> remarks;     // what was not taken, or was renamed
  std::vector<base::Problem> problems;  // those of take() (kept_trials.h); some: to be rolled back
};

// Why nothing is taken where somebody stopped it.
[[nodiscard]] base::Problem taking_stopped();

[[nodiscard]] WrittenTrial write_trial(SQLite::Database& database,
                                       const TrialToWrite& trial,
                                       const NewUid& new_uid);

}  // namespace keenfall::notebook
