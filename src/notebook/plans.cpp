#include "notebook/plans.h"

#include "notebook/notebook_file.h"
#include "notebook/plan_rows.h"
#include "notebook/plan_rules.h"
#include "notebook/random_uid.h"
#include "notebook/row_reader.h"
#include "notebook/sealing.h"
#include "notebook/trial_writer.h"

#include <algorithm>
#include <utility>

namespace keenfall::notebook {

namespace {

using MaybeProblem = std::optional<base::Problem>;

// trial_id, uid, name, then what it counts.
constexpr std::size_t kPlaceOfTrialName = 2;
constexpr std::size_t kPlaceOfCounted = 3;

std::optional<Row> row_of_trial(SQLite::Database& database, const std::string& name) {
  std::optional<Row> found;
  const Cell which = name;
  each_row(database, "trial", "WHERE name = ?", std::span(&which, 1), [&](const Row& row) {
    found = row;
  });
  return found;
}

std::int64_t number_in(const Row& trial) { return RowReader(trial).whole(); }

base::Problem no_trial(const std::string& name) {
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "The notebook has no trial called \"" + name + "\".",
          .accepted = "a trial that keenfall show lists"};
}

MaybeProblem problem_of_trial_name(SQLite::Database& database, const std::string& name) {
  if (name.empty()) {
    return base::Problem{.kind = base::ProblemKind::missing,
                         .sentence = "The trial has no name.",
                         .accepted = "a name"};
  }
  if (!row_of_trial(database, name)) return std::nullopt;
  return base::Problem{.kind = base::ProblemKind::conflicting,
                       .sentence = "The notebook has a trial called \"" + name + "\" already.",
                       .accepted = "another name"};
}

base::Problem is_sealed(const std::string& trial, const std::string& sealed_at_utc) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "The plan of " + trial + " was sealed at " + sealed_at_utc +
                      ": its claims and its plan stay as they are.",
          .accepted =
              "a new trial, with what is asked and planned now; or, as long as nothing was read "
              "since, undoing the sealing first"};
}

int runs_read_in(SQLite::Database& database, std::int64_t trial_id) {
  SQLite::Statement count(
      database,
      "SELECT count(*) FROM run WHERE trial_id = ? AND (run_id IN (SELECT run_id FROM reading) OR "
      "run_id IN (SELECT run_id FROM edge_life))");
  count.bind(1, trial_id);
  count.executeStep();
  return count.getColumn(0).getInt();
}

// The trial counts what its plan counts; one that has runs goes on as it does.
MaybeProblem count_as_planned(SQLite::Database& database,
                              Row trial,
                              const trials::Counted& planned) {
  const Row counted{planned.one, planned.many, std::int64_t{planned.is_measured ? 1 : 0}};
  const auto there = trial.begin() + kPlaceOfCounted;
  if (std::ranges::equal(counted.begin(), counted.end(), there, trial.end())) return std::nullopt;
  SQLite::Statement runs(database, "SELECT 1 FROM run WHERE trial_id = ?");
  runs.bind(1, number_in(trial));
  if (runs.executeStep()) {
    RowReader row(trial);
    row.skip(2);
    const std::string name = row.text();
    row.skip();
    return base::Problem{.kind = base::ProblemKind::conflicting,
                         .sentence = "The runs of " + name + " count " + row.text() +
                                     ", and the plan counts " + planned.many + ".",
                         .accepted = "a plan that counts the same; or a new trial"};
  }
  std::ranges::copy(counted, there);
  RowWriter(database, "trial").update(trial);
  return std::nullopt;
}

// Begun to a plan that may have been another; what was tapped holds the plan sealed.
void drop_runs_nothing_was_tapped_for(SQLite::Database& database, const std::string& trial) {
  SQLite::Statement drop(
      database,
      "DELETE FROM bench_run WHERE trial_uid = (SELECT uid FROM trial WHERE "
      "name = ?) AND bench_run_id NOT IN (SELECT bench_run_id FROM bench_entry)");
  drop.bind(1, trial);
  drop.exec();
}

}  // namespace

base::Result<JournalEntry> make_trial(Notebook& notebook,
                                      const std::string& name,
                                      const Asked& asked,
                                      const Authorship& by) {
  return change(
      notebook.file(),
      {.what = "make the trial " + name},
      by,
      [&](SQLite::Database& database) -> MaybeProblem {
        if (auto problem = problem_of_trial_name(database, name)) return problem;
        if (auto problem = problem_of(asked)) return problem;
        const TrialToWrite empty{.rows = {.trial = {.name = name, .counted = asked.plan.counted}}};
        (void)write_trial(database, empty, random_uid);
        const std::int64_t trial_id = number_in(*row_of_trial(database, name));
        write_plan(database, {.trial_id = trial_id, .asked = asked}, random_uid);
        return std::nullopt;
      });
}

base::Result<std::optional<JournalEntry>> change_asked(Notebook& notebook,
                                                       const std::string& trial,
                                                       const Asked& asked,
                                                       const Authorship& by) {
  return change_if_any(notebook.file(),
                       {.what = "plan " + trial},
                       by,
                       [&](SQLite::Database& database) -> MaybeProblem {
                         const std::optional<Row> row = row_of_trial(database, trial);
                         if (!row) return no_trial(trial);
                         const std::int64_t trial_id = number_in(*row);
                         const std::optional<KeptPlan> before = read_plan(database, trial_id);
                         if (before && before->sealed_at_utc)
                           return is_sealed(trial, *before->sealed_at_utc);
                         if (auto problem = problem_of(asked)) return problem;
                         if (auto problem = count_as_planned(database, *row, asked.plan.counted))
                           return problem;
                         write_plan(database, {.trial_id = trial_id, .asked = asked}, random_uid);
                         return std::nullopt;
                       });
}

base::Result<JournalEntry> seal(Notebook& notebook,
                                const std::string& trial,
                                const Authorship& by) {
  NotebookFile& file = notebook.file();
  const std::optional<KeptPlan> plan = kept_plan(notebook, trial);
  const std::string digest = plan ? ", SHA-256 " + plan->sha256 : "";
  return change(file,
                {.what = "seal the plan of " + trial + digest},
                by,
                [&](SQLite::Database& database) -> MaybeProblem {
                  const std::optional<Row> row = row_of_trial(database, trial);
                  if (!row) return no_trial(trial);
                  if (!plan) {
                    return base::Problem{.kind = base::ProblemKind::missing,
                                         .sentence = "The trial " + trial + " has no plan to seal.",
                                         .accepted = "a plan, written down first"};
                  }
                  if (plan->sealed_at_utc) return is_sealed(trial, *plan->sealed_at_utc);
                  if (auto problem = problem_of_sealing(*plan, trial)) return problem;
                  drop_runs_nothing_was_tapped_for(database, trial);
                  write_plan(database,
                             {.trial_id = number_in(*row),
                              .asked = {.claims = plan->claims, .plan = plan->plan},
                              .sealed_at_utc = by.at_utc,
                              .runs_read_before = runs_read_in(database, number_in(*row))},
                             random_uid);
                  return std::nullopt;
                });
}

std::optional<Sealing> sealing_of(const Notebook& notebook, const std::string& trial) {
  const OneMoment moment(notebook);
  const std::optional<KeptPlan> plan = kept_plan(notebook, trial);
  if (!plan || !plan->sealed_at_utc) return std::nullopt;
  const std::vector<JournalEntry> journal = notebook.journal();
  SQLite::Database& database = notebook.file().database;
  return seen_at_once(database, [&]() -> std::optional<Sealing> {
    const std::int64_t trial_id = number_in(*row_of_trial(database, trial));
    const auto entry = entry_that_sealed(database, journal, trial_id, *plan->sealed_at_utc);
    if (!entry) return std::nullopt;
    return Sealing{.entry = *entry,
                   .is_held = trial_whose_sealing_holds(database, journal, *entry).has_value()};
  });
}

base::Result<std::optional<JournalEntry>> rename_trial(Notebook& notebook,
                                                       const std::string& trial,
                                                       const std::string& name,
                                                       const Authorship& by) {
  return change_if_any(notebook.file(),
                       {.what = "call the trial " + trial + " " + name},
                       by,
                       [&](SQLite::Database& database) -> MaybeProblem {
                         std::optional<Row> row = row_of_trial(database, trial);
                         if (!row) return no_trial(trial);
                         if (name == trial) return std::nullopt;
                         if (auto problem = problem_of_trial_name(database, name)) return problem;
                         row->at(kPlaceOfTrialName) = name;
                         RowWriter(database, "trial").update(*row);
                         return std::nullopt;
                       });
}

std::optional<KeptPlan> kept_plan(const Notebook& notebook, const std::string& trial) {
  NotebookFile& file = notebook.file();
  if (file.version < kFirstVersionWithPlans) return std::nullopt;
  return seen_at_once(file.database, [&]() -> std::optional<KeptPlan> {
    const std::optional<Row> row = row_of_trial(file.database, trial);
    if (!row) return std::nullopt;
    return read_plan(file.database, number_in(*row));
  });
}

}  // namespace keenfall::notebook
