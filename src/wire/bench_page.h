// What the bench shows: a trial's runs in the order of cutting, and one run that is being cut. What
// is tapped there, read from the bodies of its requests. Shapes: docs/wire/api.json (Bench,
// BenchRun, BenchEntries, BeginBenchRun).
//
// Readings that were taken are told once the run is over: who has seen one reads the next towards
// it. Those of the start are told as medians of stations, since the edge is matched by them.
#pragma once

#include "base/result.h"
#include "bench/entry.h"
#include "bench/run_sheet.h"
#include "bench/standing.h"
#include "materials/told_in.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::wire {

enum class BenchRunState {
  to_cut,
  under_way,
  cut,
  voided,     // it was cut and does not count
  taken_out,  // it was cut, and what put it into the trial was undone: to cut, or to put in again
  nothing_read,  // it was begun and closed without a reading: to cut
};

// Is it cut, or was it cut and does not count? All others are open.
[[nodiscard]] constexpr bool is_done(BenchRunState state) {
  return state == BenchRunState::cut || state == BenchRunState::voided;
}

struct BenchLine {
  bench::RunToCut to_cut;
  std::string blade;
  std::string edge_words;  // empty: not recorded
  std::string medium;      // with its condition
  BenchRunState state = BenchRunState::to_cut;
  std::string run;  // uid of its run at the bench; empty: none
  double cuts = 0;

  bool operator==(const BenchLine&) const = default;
};

struct BenchTold {
  std::string trial;  // uid
  std::string name;
  std::string why_not;  // why nothing can be cut here yet, as a sentence; empty: it can
  trials::Counted counted;
  std::vector<BenchLine> lines;     // in the order of cutting; further runs at the end
  std::optional<std::size_t> next;  // index into lines: under way, else the first to cut
  std::size_t left_in_block = 0;    // of the next run's block, with it
  std::vector<std::string> cautions;

  bool operator==(const BenchTold&) const = default;
};

struct BenchRunTold {
  std::string uid;
  std::string trial;  // uid
  std::string trial_name;
  bench::RunSheet sheet;
  bench::Standing standing;
  std::vector<bench::Entry> entries;
  bool is_in_trial = false;
  std::string why_not_in_trial;   // a sentence, where it is over and could not be put there
  std::optional<double> metres;   // cut so far; absent: how long a cut is is not said
  std::size_t left_in_block = 0;  // runs, with this one
  std::vector<std::string> cautions;

  bool operator==(const BenchRunTold&) const = default;
};

struct BeginBenchRun {
  std::string uid;           // made by the device, 32 hexadecimal digits
  std::size_t line = 0;      // index into BenchTold::lines
  std::optional<int> order;  // that line's, so that another line is never begun for it

  bool operator==(const BeginBenchRun&) const = default;
};

// A reading that was typed and is not entered yet.
struct TypedReading {
  double at_cuts = 0;  // 0 or more
  double reading = 0;  // 0 or more
  std::string unit;    // empty: the sheet's

  bool operator==(const TypedReading&) const = default;
};

[[nodiscard]] std::string bench_to_json(const BenchTold& bench);
// Readings in the unit that a person wants to be told in.
[[nodiscard]] std::string bench_run_to_json(const BenchRunTold& run,
                                            const materials::ToldIn& told_in = {});

// Every problem at once, each naming its field; at most 1,000 entries. Whether a reading can be one
// of its kind is not asked here.
[[nodiscard]] base::ResultOrProblems<std::vector<bench::Entry>> bench_entries_from(
    const std::string& body);
[[nodiscard]] base::ResultOrProblems<TypedReading> typed_reading_from(const std::string& body);
// Whether it is worth a second look, and no more: who knows what is expected reads towards it.
[[nodiscard]] std::string look_again_to_json(bool look_again);
[[nodiscard]] base::ResultOrProblems<BeginBenchRun> begin_bench_run_from(const std::string& body);

// In words, for whoever takes it back: "1 cut", "the reading at 15 cuts (tip)".
[[nodiscard]] std::string words_of(const bench::Entry& entry, const bench::RunSheet& sheet);

}  // namespace keenfall::wire
