// A trial into its rows: a new one, or what is new of one that is there. Private to the folder.
#pragma once

#include "base/result.h"
#include "notebook/kept_trials.h"
#include "notebook/trial_reader.h"
#include "trials/trial.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook {

// A new random identity.
using NewUid = std::function<std::string()>;

// Counts what it added. The problems are those of take() (kept_trials.h); then nothing was written.
[[nodiscard]] std::vector<base::Problem> write_trial(SQLite::Database& database,
                                                     const trials::Trial& trial,
                                                     const std::vector<TakenTable>& tables,
                                                     const NewUid& new_uid,
                                                     Taken& taken);

}  // namespace keenfall::notebook
