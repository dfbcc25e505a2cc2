// What is asked of a trial when it is judged; the same for tables and for notebooks.
#pragma once

#include "base/seed.h"
#include "exchange/table_options.h"
#include "materials/told_in.h"
#include "verdicts/judgement.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::workbench {

struct JudgeOptions {
  double worth_it_margin = 1.5;               // above 1
  bool worth_it_is_asked = false;             // else a sealed claim's margin goes before 1.5
  std::optional<double> stop_level;           // times the start reading, above 1
  std::optional<std::string> stop_reading;    // as typed, with its unit: "400gf"; not both
  std::string model = "default";              // or "plain"
  std::optional<verdicts::ClaimAbout> claim;  // absent: of the steels wherever that can be made
  std::vector<int> looks;  // runs of every arm at each planned look, rising; empty: one look
  // What failing the test means on a curve, times the start reading, above 1; for lives that state
  // none themselves, and for a pass ladder.
  std::optional<double> test_level;
  base::Seed seed{1};
  std::optional<std::string> kind;   // only readings of this kind
  std::optional<int> rung;           // of the pass ladder, 1 to 9; absent: the one that tells most
  std::optional<std::string> trial;  // of a notebook; absent: its only one
  materials::ToldIn told_in;         // changes words and units, never a verdict
  exchange::TableOptions table;
};

// The same question, its answer told in the units that were recorded.
[[nodiscard]] inline JudgeOptions told_as_recorded(JudgeOptions options) {
  options.told_in = {};
  return options;
}

}  // namespace keenfall::workbench
