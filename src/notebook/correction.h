// A reading that is corrected: the old one struck out, the other beside it. Private to the folder.
#pragma once

#include "notebook/strike.h"
#include "notebook/trial_reader.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstddef>
#include <optional>
#include <string>

namespace keenfall::notebook {

// Which reading of a run of `rows`, by their places; not struck out yet.
struct ReadingPlace {
  std::size_t run = 0;
  std::size_t reading = 0;
};

struct Correction {
  CorrectedReading corrected;
  std::string reason;  // not empty
};

// Strikes it out with the reason and puts the corrected one behind it, at the same cuts, station
// and repeat. A unit that the trial has not been read in so far becomes a series of its own. Says
// in `struck` and `what` what is done. Nothing, or why such a reading cannot be.
[[nodiscard]] std::optional<base::Problem> correct(SQLite::Database& database,
                                                   const TrialRows& rows,
                                                   const ReadingPlace& place,
                                                   const Correction& correction,
                                                   Struck& struck,
                                                   std::string& what);

// Where it is not said which reading is meant.
[[nodiscard]] base::Problem no_reading_to_correct(const std::string& accepted);

}  // namespace keenfall::notebook
