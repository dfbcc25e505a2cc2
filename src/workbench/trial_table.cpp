#include "workbench/trial_table.h"

#include "exchange/long_table.h"
#include "exchange/long_table_text.h"

#include <algorithm>
#include <utility>

namespace keenfall::workbench {

namespace {

using trials::Trial;

// Where a reading stood in its table, what was remarked then, and which blade was named first are
// no part of a trial's content.
Trial without_its_table(Trial trial) {
  trial.remarks.clear();
  trial.name.clear();
  std::ranges::sort(trial.blades, {}, &trials::Blade::name);
  for (trials::Blade& blade : trial.blades) {
    std::ranges::sort(blade.specimens, {}, &trials::Specimen::name);
  }
  for (trials::Run& run : trial.runs) {
    for (trials::Reading& reading : run.readings) reading.line = 0;
    for (trials::EdgeLife& life : run.edge_lives) life.line = 0;
  }
  return trial;
}

exchange::TableOptions kinds_of(const Trial& trial) {
  exchange::TableOptions options;
  for (const trials::ReadingSeries& series : trial.series) {
    options.defined_kinds.push_back(series.kind);
  }
  return options;
}

base::ResultOrProblems<Trial> read_back(const std::string& text, const Trial& trial) {
  return exchange::take_table_text(text, "table.csv", kinds_of(trial));
}

std::string run_words(const trials::Run& run) {
  return "run " + run.name + " of " + run.arm.blade + " on " + run.arm.medium.name;
}

void add_runs_without_a_row(std::vector<std::string>& left_out, const Trial& trial) {
  for (const trials::Run& run : trial.runs) {
    const bool has_a_row = !run.readings.empty() || !run.edge_lives.empty() ||
                           !run.events.empty() || !run.notes.empty() || !run.deviations.empty() ||
                           run.voided_reason;
    if (!has_a_row) left_out.push_back(run_words(run) + ", of which nothing is recorded");
  }
}

bool is_in_rockwell_c(const std::optional<trials::Hardness>& hardness) {
  return !hardness || hardness->scale == trials::HardnessScale::rockwell_c;
}

void add_blades_not_whole(std::vector<std::string>& left_out,
                          const Trial& trial,
                          const Trial& read) {
  for (const trials::Blade& blade : trial.blades) {
    const trials::Blade* const same = trials::find_blade(read, blade.name);
    if (same == nullptr) {
      left_out.push_back("the blade " + blade.name + ", with which nothing was cut");
      continue;
    }
    if (*same == blade) continue;
    const bool in_rockwell_c =
        is_in_rockwell_c(blade.hardness) &&
        std::ranges::all_of(blade.specimens, is_in_rockwell_c, &trials::Specimen::hardness);
    left_out.push_back(in_rockwell_c
                           ? "all that is recorded of the blade " + blade.name + "'s pieces"
                           : "the hardness of " + blade.name + ", which is not in Rockwell C");
  }
}

std::vector<std::string> left_out_of(const std::string& text, const Trial& trial) {
  auto read = read_back(text, trial);
  if (!read) return {"all of it in a form that is taken back: " + read.error().front().sentence};
  const Trial said = without_its_table(std::move(*read));
  const Trial recorded = without_its_table(trial);
  std::vector<std::string> left_out;
  if (said == recorded) return left_out;
  add_runs_without_a_row(left_out, recorded);
  add_blades_not_whole(left_out, recorded, said);
  if (left_out.empty()) left_out.emplace_back("some of what is recorded of the runs");
  return left_out;
}

}  // namespace

TrialTable trial_table(const Trial& trial) {
  TrialTable table{.csv = exchange::long_table_of(trial)};
  table.left_out = left_out_of(table.csv, trial);
  table.is_whole = table.left_out.empty();
  return table;
}

exchange::TypedRows trial_cells(const Trial& trial) {
  exchange::TypedRows wide = exchange::wide_cells_of(trial);
  const Trial recorded = without_its_table(trial);
  const auto says_all = [&](const exchange::TypedRows& rows) {
    const std::vector<exchange::TableInHand> table = {exchange::typed_table("the sheet", rows)};
    const auto read = exchange::take_tables_in_hand(table, kinds_of(trial));
    return read && without_its_table(*read) == recorded;
  };
  // The kind is said only where it is not plain from the unit.
  exchange::TypedRows without_kind = wide;
  std::erase_if(without_kind, [](const std::vector<std::string>& row) { return row[0] == "kind"; });
  if (says_all(without_kind)) return without_kind;
  return says_all(wide) ? wide : exchange::long_cells_of(trial);
}

}  // namespace keenfall::workbench
