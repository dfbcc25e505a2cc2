// Tables that the app's pages read and take: what is asked for, from JSON, and what is answered, to
// JSON. Values; the jobs that make them are in workbench. Shapes: docs/wire/api.json (ReadTable,
// TableRead, TakeTable, TakenTable).
//
// In: a request's body. Fails with every problem at once, each naming its field. Out: one JSON
// object in one line.
#pragma once

#include "base/result.h"
#include "exchange/table_in_hand.h"
#include "exchange/table_options.h"
#include "exchange/table_survey.h"
#include "notebook/kept_trials.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::wire {

struct ReadTables {
  std::vector<exchange::TableInHand> tables;
  exchange::TableOptions options;
  std::string trial;  // uid; empty: a new one
};

struct TakeTables {
  ReadTables read;
  std::string trial_name;  // of a new trial; empty: after the first table
  bool keeps_good = false;
};

[[nodiscard]] base::ResultOrProblems<ReadTables> read_tables_from(std::string_view body);
[[nodiscard]] base::ResultOrProblems<TakeTables> take_tables_from(std::string_view body);

// How what would come in stands to a trial that is there.
struct IntoTrial {
  std::string trial;  // its name
  notebook::Taken taken;
  std::vector<base::Problem> contradictions;  // with any, nothing would be taken
};

// A trial of the name that a new one would have, were that free.
struct Namesake {
  std::string trial;  // uid
  std::string trial_name;
};

struct TablesRead {
  exchange::TableSurvey survey;
  std::string trial_name;  // of a new trial, were none said
  std::optional<Namesake> namesake;
  std::vector<std::string> arms;  // of what would come in, in words
  std::optional<IntoTrial> into;  // where there is such a trial
};

struct TablesTaken {
  std::string trial;  // uid
  std::string trial_name;
  notebook::Taken taken;
  std::int64_t last_entry = 0;  // of the journal
  std::vector<std::string> remarks;
  std::vector<std::string> left_out;    // where it stood, and why
  std::vector<base::Problem> problems;  // of what was left out
};

[[nodiscard]] std::string tables_read_to_json(const TablesRead& read);
[[nodiscard]] std::string tables_taken_to_json(const TablesTaken& taken);

}  // namespace keenfall::wire
