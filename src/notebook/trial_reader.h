// A trial out of its rows. Private to the folder.
#pragma once

#include "notebook/rows.h"
#include "trials/trial.h"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::notebook {

struct BladeKey {
  std::int64_t blade_id = 0;
  std::string uid;
};

struct RunKey {
  std::int64_t run_id = 0;
  std::string uid;
};

// Name and condition.
using MediumName = std::pair<std::string, std::string>;

struct TrialRows {
  std::int64_t trial_id = 0;
  std::string uid;
  trials::Trial trial;
  std::vector<RunKey> runs;                // as trial.runs
  std::map<std::string, BladeKey> blades;  // by name
  std::map<MediumName, std::string> media_uids;
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

// The blade with no specimens, and by what it is known.
struct BladeRow {
  std::int64_t blade_id = 0;
  std::string uid;
  trials::Blade blade;
};
[[nodiscard]] BladeRow blade_of(const Row& cells);

struct SpecimenRow {
  std::int64_t specimen_id = 0;
  std::int64_t blade_id = 0;
  trials::Specimen specimen;
};
[[nodiscard]] SpecimenRow specimen_of(const Row& cells);

}  // namespace keenfall::notebook
