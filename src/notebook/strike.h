// Striking readings out, correcting one, and voiding runs: with a reason, and the old one still
// there to be seen.
#pragma once

#include "base/result.h"
#include "notebook/notebook.h"

#include <cstddef>
#include <optional>
#include <string>

namespace keenfall::notebook {

// What a reading that is struck out should have been; it comes in beside it, by the same entry.
struct CorrectedReading {
  double reading = 0;  // finite, and what its kind can be
  std::string unit;    // one that converts to that of the struck reading; empty: the same
};

// Which readings of which run; what is left empty does not narrow the choice.
struct StrikeRequest {
  std::string trial;
  std::string blade;   // its name, or with its edge: "A (15° per side)"
  std::string medium;  // its name, or with its condition: "pine, wet"
  std::string specimen;
  std::string run;                    // its name
  std::optional<double> cuts;         // of readings
  std::optional<double> lasted_cuts;  // of edge lives; absent, as cuts: the whole run is voided
  std::optional<double> reading;
  std::string station;
  std::string reason;                       // not empty
  std::optional<CorrectedReading> instead;  // of the one reading that fits
};

struct Struck {
  JournalEntry entry;
  std::string run_words;  // "run 2 of A on new matting"
  std::size_t readings = 0;
  std::size_t edge_lives = 0;
  std::size_t voided_runs = 0;
  std::optional<std::string> instead;  // "104 gf", where a reading was corrected
};

// Fails where no run, or more than one, or nothing that is not struck yet fits, or more than one
// reading where one is to be corrected; then it says what the trial or the run has.
[[nodiscard]] base::Result<Struck> strike(Notebook& notebook,
                                          const StrikeRequest& request,
                                          const Authorship& by);

// The same by places, for whoever has the trial before their eyes: a reading, all readings after so
// many cuts, or with neither the whole run.
struct StrikeAt {
  std::string trial;
  std::size_t run = 0;                 // in the trial's runs
  std::optional<std::size_t> reading;  // in the run's readings
  std::optional<double> cuts;
  std::string reason;                       // not empty
  std::optional<CorrectedReading> instead;  // where a reading is meant
};

[[nodiscard]] base::Result<Struck> strike_at(Notebook& notebook,
                                             const StrikeAt& request,
                                             const Authorship& by);

}  // namespace keenfall::notebook
