// Run sheets and entries for tests: only what matters is said.
#pragma once

#include "bench/entry.h"
#include "bench/run_sheet.h"

#include <string>
#include <utility>
#include <vector>

namespace keenfall::bench {

// New sisal matting: doubling checkpoints to 255, seven readings on three stations, start 104 gf
// within 12 %, stop at four times the start.
inline RunSheet a_sheet() {
  return {.run = {.name = "3",
                  .arm = {.blade = "C", .edge = {}, .medium = {.name = "new sisal"}, .method = {}},
                  .specimen = {},
                  .block = "3",
                  .order = 14,
                  .medium_lot = {}},
          .counted = {},
          .kind = *trials::find_reading_kind("thread_push"),
          .unit = "gf",
          .thread = "0.25 mm polyester",
          .thread_lot = {},
          .repeats = 7,
          .stations = {"heel", "middle", "tip"},
          .checkpoint_cuts = {0, 1, 3, 7, 15, 31, 63, 127, 255},
          .start_gate = trials::StartGate{.target_reading = 104, .tolerance_fraction = 0.12},
          .stop = {.level = 4, .reading = {}, .force_cap_newton = {}}};
}

inline std::vector<double> seven(double reading) { return std::vector<double>(7, reading); }

// Entries as one device makes them, a second apart.
class Tapped {
 public:
  Tapped& with(WhatWasDone what) {
    entries_.push_back({.id = "e" + std::to_string(entries_.size() + 1),
                        .device = {},
                        .at_ms = static_cast<std::int64_t>(1000 * entries_.size()),
                        .what = std::move(what)});
    return *this;
  }
  Tapped& cut(int times) {
    for (int i = 0; i < times; ++i) with(CutsMade{});
    return *this;
  }
  Tapped& read(double at_cuts, const std::vector<double>& readings) {
    const RunSheet sheet = a_sheet();
    for (std::size_t i = 0; i < readings.size(); ++i) {
      with(ReadingTaken{.at_cuts = at_cuts,
                        .reading = readings[i],
                        .station = station_in_turn(sheet, i),
                        .scale_line = {},
                        .note = {}});
    }
    return *this;
  }
  Tapped& start() { return read(0, seven(104)).with(StartDecided{}); }
  Tapped& take_back(const std::string& id) { return with(TakenBack{.id = id}); }
  [[nodiscard]] const std::string& last_id() const { return entries_.back().id; }
  [[nodiscard]] const std::vector<Entry>& entries() const { return entries_; }

 private:
  std::vector<Entry> entries_;
};

}  // namespace keenfall::bench
