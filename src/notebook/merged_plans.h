// A claim and a plan of another notebook's trial, brought to the same trial here. Private to the
// folder.
#pragma once

#include "base/result.h"
#include "notebook/kit_rows.h"
#include "notebook/plans.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <optional>
#include <string>

namespace keenfall::notebook {

// The other notebook's plan, with blades as they are called here.
struct PlanThere {
  std::string trial;  // as it is called here
  KeptPlan plan;
};

// A trial without a plan gets it. What is planned alike in both was sealed when it was first. What
// is planned otherwise is a problem, and here stays as it is.
[[nodiscard]] std::optional<base::Problem> merge_plan(SQLite::Database& here,
                                                      const PlanThere& there,
                                                      const NewUid& new_uid);

}  // namespace keenfall::notebook
