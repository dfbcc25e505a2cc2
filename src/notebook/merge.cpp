#include "notebook/merge.h"

#include "base/require.h"
#include "notebook/bench_runs.h"
#include "notebook/check.h"
#include "notebook/kit_rows.h"
#include "notebook/look_rows.h"
#include "notebook/merged_kit.h"
#include "notebook/merged_names.h"
#include "notebook/merged_plans.h"
#include "notebook/notebook_file.h"
#include "notebook/plan_rows.h"
#include "notebook/random_uid.h"
#include "notebook/row_reader.h"
#include "notebook/trial_reader.h"
#include "notebook/trial_writer.h"

#include <algorithm>
#include <map>
#include <set>
#include <span>
#include <utility>

namespace keenfall::notebook {

namespace {

std::vector<TakenTable> tables_taken(SQLite::Database& database, std::int64_t trial_id) {
  std::vector<TakenTable> tables;
  const Cell which = trial_id;
  each_row(database,
           "taken_table",
           "WHERE trial_id = ? ORDER BY sha256",
           std::span(&which, 1),
           [&](const Row& cells) {
             RowReader row(cells);
             row.skip();
             TakenTable table{.sha256 = row.text()};
             table.file_name = row.text();
             tables.push_back(std::move(table));
           });
  return tables;
}

base::Problem damaged(const Notebook& other, const std::string& first_flaw) {
  return {.kind = base::ProblemKind::unreadable,
          .sentence = "This notebook is damaged, so nothing of it was merged. " + first_flaw,
          .place = {.file = other.path()},
          .accepted = "a whole copy; keenfall check says all that is damaged"};
}

class Merging {
 public:
  Merging(SQLite::Database& here, NotebookFile& there, const MergeRules& rules)
      : here_(here), there_(there.database), there_version_(there.version), rules_(rules) {}

  std::vector<base::Problem> merge() {
    names_ = merged_names(here_, there_, rules_);
    merged_.remarks = names_.remarks;
    problems_ = names_.problems;
    if (!problems_.empty()) return problems_;  // what rests on names would be said in wrong ones
    merge_kit();
    for (const auto& name : texts_in(there_, "SELECT name FROM trial ORDER BY trial_id")) {
      merge_trial(name);
    }
    if (there_version_ >= 2) merge_looks();
    return problems_;
  }

  // Of trials, by their uid there.
  [[nodiscard]] const std::map<std::string, std::string>& uids_here() const { return uids_here_; }

  Merged merged() && {
    merged_.not_taken = static_cast<std::size_t>(std::ranges::count_if(
        merged_.remarks, [](const auto& sentence) { return sentence.starts_with(kNotTaken); }));
    return std::move(merged_);
  }

 private:
  void report(const std::optional<base::Problem>& problem) {
    if (!problem) return;
    if (rules_.keeps_what_is_here) return remark(kNotTaken + problem->sentence);
    base::Problem of_kit = *problem;
    of_kit.accepted = "--keep-here, to let what is here stand";
    add_problem(std::move(of_kit));
  }

  // The kit and a trial may say the same of a blade.
  void add_problem(base::Problem problem) {
    const auto same = std::ranges::find(problems_, problem.sentence, &base::Problem::sentence);
    if (same == problems_.end()) problems_.push_back(std::move(problem));
  }
  void remark(const std::string& sentence) {
    if (std::ranges::count(merged_.remarks, sentence) == 0) merged_.remarks.push_back(sentence);
  }

  void merge_kit() {
    RowWriters writers(here_);
    const NewUid new_uid = random_uid;
    KitRows kit(here_, writers, new_uid);
    std::map<std::int64_t, std::pair<std::string, std::int64_t>> blades;  // here, by key there
    each_row(there_, "blade", "ORDER BY blade_id", {}, [&](const Row& row) {
      BladeRow blade = blade_of(row);
      blade.blade.name = names_.blades.at(blade.blade.name);
      const KitRow here = kit.blade(blade.blade, blade.uid);
      report(here.problem);
      blades[blade.blade_id] = {blade.blade.name, here.id};
    });
    each_row(there_, "specimen", "ORDER BY specimen_id", {}, [&](const Row& row) {
      const SpecimenRow piece = specimen_of(row);
      const auto& [name, id] = blades.at(piece.blade_id);
      report(kit.specimen(name, id, piece.specimen).problem);
    });
    each_row(there_, "medium", "ORDER BY medium_id", {}, [&](const Row& cells) {
      RowReader row(cells);
      row.skip();
      const std::string uid = row.text();
      const std::string name = row.text();
      (void)kit.medium({.name = name, .condition = row.text()}, uid);
    });
    if (there_version_ < kFirstVersionWithPlans) return;
    const MergedShelves shelves = merge_shelves(here_, there_, rules_);
    for (const std::string& sentence : shelves.remarks) remark(sentence);
    for (const base::Problem& problem : shelves.problems) report(problem);
  }

  // The trial as it would be here: its own name and those of its blades as they are called here.
  TrialRows renamed(TrialRows rows) {
    rows.trial.name = names_.trials.at(rows.trial.name);
    for (trials::Blade& blade : rows.trial.blades) blade.name = names_.blades.at(blade.name);
    for (trials::Run& run : rows.trial.runs) run.arm.blade = names_.blades.at(run.arm.blade);
    std::map<std::string, BladeKey> blades;
    for (auto& [name, key] : rows.blades) blades[names_.blades.at(name)] = std::move(key);
    rows.blades = std::move(blades);
    return rows;
  }

  void merge_trial(const std::string& name) {
    std::optional<TrialRows> rows = read_trial(there_, name);
    base::require(rows.has_value(), "a trial that was listed is there");
    const std::string uid_there = rows->uid;
    const std::int64_t id_there = rows->trial_id;
    const bool is_here = uid_of(names_.trials.at(name)).has_value();
    WrittenTrial written =
        write_trial(here_,
                    {.rows = renamed(std::move(*rows)),
                     .tables = tables_taken(there_, id_there),
                     .source = TrialSource::notebook,
                     .keeps_what_is_here = rules_.keeps_what_is_here,
                     .alike_runs_are_one = rules_.alike_names == AlikeNames::are_one,
                     .apart = rules_.apart,
                     .remarks_on = rules_.remarks_on},
                    random_uid);
    for (const base::Problem& problem : written.problems) add_problem(problem);
    for (const std::string& sentence : written.remarks) remark(sentence);
    if (!is_here) ++merged_.trials_added;
    merged_.runs.runs_added += written.taken.runs_added;
    merged_.runs.runs_grown += written.taken.runs_grown;
    merged_.runs.runs_known += written.taken.runs_known;
    merged_.runs.readings_added += written.taken.readings_added;
    if (const auto uid = uid_of(names_.trials.at(name))) uids_here_[uid_there] = *uid;
    if (there_version_ >= kFirstVersionWithPlans && written.problems.empty()) {
      merge_plan_of(name, id_there);
    }
  }

  void merge_plan_of(const std::string& trial, std::int64_t id_there) {
    std::optional<KeptPlan> plan = read_plan(there_, id_there);
    if (!plan) return;
    for (trials::PlannedArm& arm : plan->plan.arms) arm.blade = names_.blades.at(arm.blade);
    std::string& house_blade = plan->plan.house_blade;
    if (!house_blade.empty()) house_blade = names_.blades.at(house_blade);
    report(merge_plan(
        here_, {.trial = names_.trials.at(trial), .plan = std::move(*plan)}, random_uid));
  }

  std::optional<std::string> uid_of(const std::string& trial) {
    SQLite::Statement find(here_, "SELECT uid FROM trial WHERE name = ?");
    find.bind(1, trial);
    if (!find.executeStep()) return std::nullopt;
    return find.getColumn(0).getString();
  }

  void merge_looks() {
    std::set<std::string> known;
    for (std::string& uid : texts_in(here_, "SELECT uid FROM look")) known.insert(std::move(uid));
    RowWriters writers(here_);
    for (const auto& trial_uid :
         texts_in(there_, "SELECT DISTINCT trial_uid FROM stored_judgement ORDER BY trial_uid")) {
      const auto here = uids_here_.find(trial_uid);
      for (const LookRow& look : read_looks(there_, trial_uid)) {
        if (!known.insert(look.uid).second) continue;
        write_look(here_, writers, here == uids_here_.end() ? trial_uid : here->second, look);
        ++merged_.looks_added;
      }
    }
  }

  SQLite::Database& here_;
  SQLite::Database& there_;
  std::int64_t there_version_;
  const MergeRules& rules_;
  MergedNames names_;
  std::map<std::string, std::string> uids_here_;
  std::vector<base::Problem> problems_;
  Merged merged_;
};

std::optional<trials::Plan> plan_of(const Notebook& notebook, const std::string& trial_uid) {
  const auto name = trial_name_of(notebook, trial_uid);
  if (!name) return std::nullopt;
  auto kept = kept_plan(notebook, *name);
  if (!kept) return std::nullopt;
  return std::move(kept->plan);
}

// Beside the journal, as they are here: not part of the change. What a run is cut to is said by
// its trial's plan.
void merge_bench(Notebook& into,
                 const Notebook& other,
                 const std::map<std::string, std::string>& uids_here,
                 std::vector<std::string>& remarks) {
  for (BenchRun run : all_bench_runs(other)) {
    const std::string uid_there = run.trial_uid;
    const auto here = uids_here.find(uid_there);
    if (here != uids_here.end()) run.trial_uid = here->second;
    if (plan_of(into, run.trial_uid) != plan_of(other, uid_there)) {
      remarks.push_back(kNotTaken +
                        std::string("a run at the bench, since its plan is another here."));
      continue;
    }
    std::optional<base::Problem> problem = begin_bench_run(into, run);
    if (!problem) {
      const ArrivedEntries arrived{.run_uid = run.uid, .entries = std::move(run.entries)};
      problem = keep_entries(into, std::span(&arrived, 1)).front();
    }
    if (problem) remarks.push_back(kNotTaken + problem->sentence);
  }
}

}  // namespace

base::ResultOrProblems<Merged> merge(Notebook& into,
                                     const Notebook& other,
                                     const std::string& what,
                                     const MergeRules& rules,
                                     const Authorship& by) {
  using Problems = std::vector<base::Problem>;
  base::require(rules.alike_names != AlikeNames::are_apart || !rules.apart.empty(),
                "what is set apart is told apart by a name");
  const bool has_a_journal = !other.path().empty();  // content from elsewhere has none
  const auto flaws = has_a_journal ? check(other) : check_content(other);
  if (!flaws.empty()) {
    return tl::unexpected<Problems>(Problems{damaged(other, flaws.front())});
  }
  Merged merged;
  Problems problems;
  std::map<std::string, std::string> uids_here;
  const auto entry = change_if_any(
      into.file(), {.what = what}, by, [&](SQLite::Database& here) -> std::optional<base::Problem> {
        Merging merging(here, other.file(), rules);
        problems = merging.merge();
        if (!problems.empty()) return problems.front();
        uids_here = merging.uids_here();
        merged = std::move(merging).merged();
        return std::nullopt;
      });
  if (!entry) {
    return tl::unexpected<Problems>(problems.empty() ? Problems{entry.error()} : problems);
  }
  merged.entry = *entry;
  merge_bench(into, other, uids_here, merged.remarks);
  return merged;
}

}  // namespace keenfall::notebook
