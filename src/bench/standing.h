// How a run at the bench stands: what its entries come to, and what comes next.
//
// A pure function of the sheet and the entries in the order in which they came in: the same entries
// give the same standing after a crash, on another device, and in another order of taking back.
// Cuts as the trial counts them; readings in the sheet's unit; minutes by the devices' clocks.
#pragma once

#include "bench/entry.h"
#include "bench/run_sheet.h"
#include "bench/start_gate.h"
#include "bench/usual_range.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::bench {

enum class Phase {
  preparing,    // the start is not decided
  cutting,      // on to the next checkpoint
  reading,      // a checkpoint is reached, and not read as often as planned
  at_the_stop,  // blunt enough, or at the cap: close it
  closed,
  voided
};

enum class StopReached { level, reading, cap };

struct TakenReading {
  std::size_t entry = 0;  // index into the entries
  double at_cuts = 0;
  double reading = 0;
  std::string station;
  std::size_t checkpoint = 0;      // index into RunSheet::checkpoint_cuts: the last one reached
  bool before_sharpening = false;  // of a start that was sharpened anew

  bool operator==(const TakenReading&) const = default;
};

// An entry that stands but says nothing, and why.
struct SetAside {
  std::size_t entry = 0;
  std::string why;

  bool operator==(const SetAside&) const = default;
};

struct Standing {
  Phase phase = Phase::preparing;
  double cuts = 0;
  std::optional<double> next_checkpoint_cuts;  // still to be cut to; absent: none
  std::size_t readings_here = 0;               // at the checkpoint that is being read
  std::string next_station;                    // empty: none is said
  std::optional<UsualRange> usual;             // of the next reading; absent: nothing to go by
  int sharpenings = 1;                         // of this start
  Start start;
  std::optional<StartDecided> decided;
  std::optional<StopReached> stop;
  std::vector<TakenReading> readings;
  std::vector<SetAside> set_aside;          // such as what came after the end
  std::optional<std::size_t> to_take_back;  // the last entry that stands
  bool is_paused = false;
  int pieces = 1;              // of the lot, with the one begun with
  double minutes_at_work = 0;  // between entries, pauses and gaps of more than ten minutes left out

  bool operator==(const Standing&) const = default;
};

// Ten times a tenth is one.
[[nodiscard]] double cuts_after(double cuts, const CutsMade& made);

[[nodiscard]] Standing standing_of(const RunSheet& sheet, std::span<const Entry> entries);

// Of entries that take back others, those that are left: by index, in their order. Entries that
// take back are none of them, and of one id the first counts.
[[nodiscard]] std::vector<std::size_t> entries_that_stand(std::span<const Entry> entries);

}  // namespace keenfall::bench
