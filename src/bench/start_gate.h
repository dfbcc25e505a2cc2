// Is the start matched? Readings before the first cut, by station, against the plan's gate.
//
// Combined is the median of the stations' medians, so that one odd place does not decide. A station
// whose repeats grow blunter reading by reading is a burr being bent or broken off: a reading on a
// clean apex dents only its own spot. Repeats that come to 1.4 times the first on two readings, or
// that rise throughout to 1.3 times on three or more, are taken for that (common practice, no
// source; one published record has 150 to 300 gf on a weak apex). At a scatter of 9 % a
// clean edge is suspected in fewer than one start out of fifteen (start_gate_test.cpp).
#pragma once

#include "bench/run_sheet.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::bench {

struct SpotReading {
  std::string station;  // empty: not said
  double reading = 0;   // in the sheet's unit

  bool operator==(const SpotReading&) const = default;
};

struct StationStart {
  std::string station;
  std::size_t readings = 0;
  double median = 0;
  bool outside_gate = false;   // false where there is no gate
  bool grows_blunter = false;  // repeats suggest a burr

  bool operator==(const StationStart&) const = default;
};

struct GateLimits {
  double lowest = 0;
  double highest = 0;

  bool operator==(const GateLimits&) const = default;
};

struct Start {
  std::vector<StationStart> stations;  // in the order in which they were first read
  std::size_t readings = 0;
  std::optional<double> combined;    // nothing read: absent
  std::optional<GateLimits> limits;  // no gate: absent
  bool within_gate = false;          // read, and within limits; true where there is no gate
  bool burr_suspected = false;

  bool operator==(const Start&) const = default;
};

// `readings`: in the order in which they were taken, all of one sharpening.
[[nodiscard]] Start start_of(const RunSheet& sheet, std::span<const SpotReading> readings);

// The median of the medians of stations. Not empty.
[[nodiscard]] double combined_reading(std::span<const SpotReading> readings);

}  // namespace keenfall::bench
