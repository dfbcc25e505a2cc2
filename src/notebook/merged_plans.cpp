#include "notebook/merged_plans.h"

#include "base/require.h"
#include "notebook/plan_rows.h"
#include "notebook/trial_reader.h"

namespace keenfall::notebook {

namespace {

// Of two that say the same, the one that was sealed first.
const KeptPlan& sealed_first(const KeptPlan& one, const KeptPlan& other) {
  if (!one.sealed_at_utc) return other;
  return other.sealed_at_utc && *other.sealed_at_utc < *one.sealed_at_utc ? other : one;
}

struct TrialHere {
  std::int64_t trial_id = 0;
  trials::Counted counted;
};

TrialHere trial_called(SQLite::Database& here, const std::string& name) {
  SQLite::Statement find(here,
                         "SELECT trial_id, counted_one, counted_many, counted_is_measured FROM "
                         "trial WHERE name = ?");
  find.bind(1, name);
  base::require(find.executeStep(), "the trial was merged before its plan");
  return {.trial_id = find.getColumn(0).getInt64(),
          .counted = {.one = find.getColumn(1).getString(),
                      .many = find.getColumn(2).getString(),
                      .is_measured = find.getColumn(3).getInt() != 0}};
}

}  // namespace

std::optional<base::Problem> merge_plan(SQLite::Database& here,
                                        const PlanThere& there,
                                        const NewUid& new_uid) {
  const TrialHere trial = trial_called(here, there.trial);
  const std::optional<KeptPlan> before = read_plan(here, trial.trial_id);
  const Asked asked{.claims = there.plan.claims, .plan = there.plan.plan};
  const bool fits =
      before ? Asked{before->claims, before->plan} == asked : trial.counted == asked.plan.counted;
  if (!fits) {
    return base::Problem{.kind = base::ProblemKind::conflicting,
                         .sentence = "What is asked and planned in " + there.trial +
                                     " is not the same in both notebooks."};
  }
  const KeptPlan& sealed = before ? sealed_first(*before, there.plan) : there.plan;
  write_plan(here,
             {.trial_id = trial.trial_id,
              .asked = asked,
              .sealed_at_utc = sealed.sealed_at_utc,
              .runs_read_before = sealed.runs_read_before},
             new_uid);
  return std::nullopt;
}

}  // namespace keenfall::notebook
