// For tests: a table written in the test is taken in, or its problems are.
#pragma once

#include "exchange/long_table.h"

#include <stdexcept>
#include <string>
#include <vector>

namespace keenfall::exchange {

inline trials::Trial taken(const std::string& text, const TableOptions& options = {}) {
  const auto trial = take_table_text(text, "t.csv", options);
  if (!trial) throw std::runtime_error("refused: " + base::in_words(trial.error().front()));
  return *trial;
}

inline std::vector<base::Problem> problems_in(const std::string& text,
                                              const TableOptions& options = {}) {
  const auto trial = take_table_text(text, "t.csv", options);
  if (trial) throw std::runtime_error("taken, though it should be refused: " + text);
  return trial.error();
}

// The first problem as a person reads it.
inline std::string problem_in(const std::string& text, const TableOptions& options = {}) {
  return base::in_words(problems_in(text, options).front());
}

// A table with the five required columns and one run.
inline std::string with_rows(const std::string& rows) {
  return "blade,medium,run,cuts,reading\n" + rows;
}

// The same with further columns, at the end.
inline std::string with_columns(const std::string& columns, const std::string& rows) {
  return "blade,medium,run,cuts,reading," + columns + "\n" + rows;
}

// What a trial says, wherever in a table it was said.
inline trials::Trial without_lines(trials::Trial trial) {
  trial.remarks.clear();
  for (trials::Run& run : trial.runs) {
    for (trials::Reading& reading : run.readings) reading.line = 0;
    for (trials::EdgeLife& life : run.edge_lives) life.line = 0;
  }
  return trial;
}

}  // namespace keenfall::exchange
