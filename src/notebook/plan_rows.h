// What is asked and planned in a trial, into its rows and out of them. Private to the folder.
#pragma once

#include "notebook/kit_rows.h"
#include "notebook/plans.h"
#include "notebook/row_writers.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace keenfall::notebook {

inline constexpr std::int64_t kFirstVersionWithPlans = 3;

// Is it one of those that hold a trial's claims and plan? Their first column is the trial's number.
[[nodiscard]] bool is_of_plans(std::string_view table);

// Nothing where the trial has none.
[[nodiscard]] std::optional<KeptPlan> read_plan(SQLite::Database& database, std::int64_t trial_id);

struct PlanToWrite {
  std::int64_t trial_id = 0;
  Asked asked;
  std::optional<std::string> sealed_at_utc;
  int runs_read_before = 0;  // as in KeptPlan
};

// In place of what is there; rows that say the same stay untouched. Blades and media that are not
// in the kit come into it.
void write_plan(SQLite::Database& database, const PlanToWrite& plan, const NewUid& new_uid);

}  // namespace keenfall::notebook
