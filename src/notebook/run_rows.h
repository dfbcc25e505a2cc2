// A run into its rows: a new one, or what is new of one that is there. Private to the folder.
#pragma once

#include "notebook/row_writers.h"
#include "trials/trial.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace keenfall::notebook {

// Of a run: what its row holds besides what the run says itself.
struct RunPlace {
  std::int64_t run_id = 0;
  std::string uid;
  std::int64_t trial_id = 0;
  std::size_t place = 0;  // among the trial's runs
  std::int64_t blade_id = 0;
  std::int64_t medium_id = 0;
};

void write_new_run(RowWriters& writers, const RunPlace& place, const trials::Run& run);

// `now` has all parts of `before`, in their order; rows that say the same stay untouched.
void write_grown_run(RowWriters& writers,
                     const RunPlace& place,
                     const trials::Run& before,
                     const trials::Run& now);

// The same of its readings alone.
void write_grown_readings(RowWriters& writers,
                          std::int64_t run_id,
                          const std::vector<trials::Reading>& before,
                          const std::vector<trials::Reading>& now);

}  // namespace keenfall::notebook
