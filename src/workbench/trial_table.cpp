#include "workbench/trial_table.h"

#include "exchange/long_table.h"
#include "exchange/long_table_text.h"

#include <utility>

namespace keenfall::workbench {

namespace {

// Where a reading stood in its table, and what was remarked then, is no part of a trial's content.
trials::Trial without_its_table(trials::Trial trial) {
  trial.remarks.clear();
  trial.name.clear();
  for (trials::Run& run : trial.runs) {
    for (trials::Reading& reading : run.readings) reading.line = 0;
    for (trials::EdgeLife& life : run.edge_lives) life.line = 0;
  }
  return trial;
}

// Is the trial that the text says this one?
bool says_all_of(const std::string& text, const trials::Trial& trial) {
  exchange::TableOptions options;
  for (const trials::ReadingSeries& series : trial.series) {
    options.defined_kinds.push_back(series.kind);
  }
  auto read = exchange::take_table_text(text, "table.csv", options);
  return read && without_its_table(std::move(*read)) == without_its_table(trial);
}

}  // namespace

TrialTable trial_table(const trials::Trial& trial) {
  TrialTable table{.csv = exchange::long_table_of(trial)};
  table.is_whole = says_all_of(table.csv, trial);
  return table;
}

}  // namespace keenfall::workbench
