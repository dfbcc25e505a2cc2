// A trial out of its rows. Private to the folder.
#pragma once

#include "notebook/rows.h"
#include "trials/trial.h"

#include <cstdint>
#include <map>
#include <optional>
#include <string>

namespace keenfall::notebook {

struct TrialRows {
  std::int64_t trial_id = 0;
  trials::Trial trial;
  std::vector<std::int64_t> run_ids;              // as trial.runs
  std::map<std::string, std::int64_t> blade_ids;  // by name
};

// Nothing where there is no trial of that name.
[[nodiscard]] std::optional<TrialRows> read_trial(SQLite::Database& database,
                                                  const std::string& name);

// Which runs of a trial; an empty blade: of all.
struct RunsWanted {
  std::string called;
  std::string blade;
};

// The same with only those runs.
[[nodiscard]] std::optional<TrialRows> read_runs(SQLite::Database& database,
                                                 const std::string& trial,
                                                 const RunsWanted& wanted);

// The blade with no specimens, and its key.
struct BladeRow {
  std::int64_t blade_id = 0;
  trials::Blade blade;
};
[[nodiscard]] BladeRow blade_of(const Row& row);

}  // namespace keenfall::notebook
