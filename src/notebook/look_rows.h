// The rows of looks and of the judgements they saw. Private to the folder.
#pragma once

#include "notebook/looks.h"
#include "notebook/row_writers.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>
#include <vector>

namespace keenfall::notebook {

struct LookRow {
  std::string uid;
  std::string judgement_uid;
  Look look;
};

// At the trial of that uid, in the order they were made.
[[nodiscard]] std::vector<LookRow> read_looks(SQLite::Database& database,
                                              const std::string& trial_uid);

// A judgement that is there already (same inputs, question, seed and version) is not stored again.
void write_look(SQLite::Database& database,
                RowWriters& writers,
                const std::string& trial_uid,
                const LookRow& look);

}  // namespace keenfall::notebook
