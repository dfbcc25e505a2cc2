#include "notebook/bench_runs.h"

#include "base/require.h"
#include "notebook/bench_cells.h"
#include "notebook/notebook_failure.h"
#include "notebook/notebook_file.h"
#include "notebook/places.h"
#include "notebook/random_uid.h"
#include "notebook/row_reader.h"
#include "notebook/row_writers.h"
#include "notebook/trial_words.h"
#include "notebook/trial_writer.h"

#include <SQLiteCpp/Savepoint.h>

#include <array>
#include <cstdint>
#include <utility>

namespace keenfall::notebook {

namespace {

// The first version of the schema that has the tables.
constexpr std::int64_t kVersion = 4;

struct RunRow {
  std::int64_t key = 0;
  BenchRun run;
};

RunRow run_in(const Row& cells) {
  RowReader row(cells);
  RunRow found{.key = row.whole()};
  found.run.uid = row.text();
  found.run.trial_uid = row.text();
  found.run.to_cut.name = row.text();
  found.run.to_cut.arm = static_cast<std::size_t>(row.small_whole());
  found.run.to_cut.specimen = row.text();
  found.run.to_cut.block = row.small_whole();
  found.run.to_cut.order = row.whole_if_any();
  found.run.begun_at_utc = row.text();
  found.run.who = row.text();
  return found;
}

std::vector<bench::Entry> entries_of(SQLite::Database& database, std::int64_t run_key) {
  std::vector<bench::Entry> entries;
  Places places("bench_entry");
  const Cell which = run_key;
  each_row(database,
           "bench_entry",
           "WHERE bench_run_id = ? ORDER BY place",
           std::span(&which, 1),
           [&](const Row& cells) {
             RowReader row(cells);
             row.skip();
             places.next(run_key, row.whole());
             entries.push_back(entry_in(row));
           });
  return entries;
}

// With their entries, in the order in which they were begun; which: "WHERE uid = ?", may be empty.
std::vector<RunRow> runs_where(SQLite::Database& database,
                               const std::string& which,
                               std::span<const Cell> values) {
  std::vector<RunRow> found;
  each_row(database, "bench_run", which + " ORDER BY bench_run_id", values, [&](const Row& cells) {
    found.push_back(run_in(cells));
  });
  for (RunRow& row : found) row.run.entries = entries_of(database, row.key);
  return found;
}

std::vector<RunRow> runs_with_uid(SQLite::Database& database, const std::string& uid) {
  const Cell value = uid;
  return runs_where(database, "WHERE uid = ?", std::span(&value, 1));
}

std::vector<BenchRun> runs_kept(NotebookFile& file,
                                const std::string& which,
                                std::span<const Cell> values) {
  if (file.version < kVersion) return {};
  return seen_at_once(file.database, [&] {
    std::vector<BenchRun> runs;
    for (RunRow& row : runs_where(file.database, which, values)) {
      runs.push_back(std::move(row.run));
    }
    return runs;
  });
}

std::optional<std::int64_t> key_of_run(SQLite::Database& database, const std::string& uid) {
  SQLite::Statement find(database, "SELECT bench_run_id FROM bench_run WHERE uid = ?");
  find.bind(1, uid);
  if (!find.executeStep()) return std::nullopt;
  return find.getColumn(0).getInt64();
}

// Of which run, and its cells after bench_run_id and place.
struct KeptEntry {
  std::int64_t run_key = 0;
  Row cells;

  bool operator==(const KeptEntry&) const = default;
};

std::optional<KeptEntry> kept_entry(SQLite::Database& database, const std::string& client_id) {
  constexpr std::ptrdiff_t kBefore = 2;
  std::optional<KeptEntry> found;
  const Cell which = client_id;
  each_row(
      database, "bench_entry", "WHERE client_id = ?", std::span(&which, 1), [&](const Row& cells) {
        found = KeptEntry{RowReader(cells).whole(), {cells.begin() + kBefore, cells.end()}};
      });
  return found;
}

base::Problem says_otherwise(const std::string& id) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "An entry with the id " + id + " is there, and says something else.",
          .accepted = "a new id for each entry"};
}

class Keeping {
 public:
  explicit Keeping(SQLite::Database& database)
      : database_(database), writer_(database, "bench_entry") {}

  std::optional<base::Problem> keep(const ArrivedEntries& arrived) {
    const auto key = key_of_run(database_, arrived.run_uid);
    if (!key) return no_such_bench_run(arrived.run_uid);
    SQLite::Savepoint all_or_none(database_, "arrived");
    std::int64_t place = next_place(*key);
    for (const bench::Entry& entry : arrived.entries) {
      Row cells = cells_of(entry);
      if (const auto kept = kept_entry(database_, entry.id)) {
        if (*kept == KeptEntry{*key, cells}) continue;
        return says_otherwise(entry.id);
      }
      cells.insert(cells.begin(), {*key, place++});
      writer_.insert(cells);
    }
    all_or_none.release();
    return std::nullopt;
  }

 private:
  std::int64_t next_place(std::int64_t run_key) {
    SQLite::Statement last(database_,
                           "SELECT ifnull(max(place), -1) + 1 FROM bench_entry WHERE "
                           "bench_run_id = ?");
    last.bind(1, run_key);
    last.executeStep();
    return last.getColumn(0).getInt64();
  }

  SQLite::Database& database_;
  RowWriter writer_;
};

}  // namespace

base::Problem no_such_bench_run(const std::string& uid) {
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "The notebook has no such run at the bench.",
          .place = {.column = "run", .found = uid},
          .accepted = "a run that was begun in this notebook"};
}

std::optional<base::Problem> begin_bench_run(Notebook& notebook, const BenchRun& run) {
  SQLite::Database& database = notebook.file().database;
  return carrying_over([&]() -> std::optional<base::Problem> {
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    const std::vector<RunRow> there = runs_with_uid(database, run.uid);
    if (!there.empty()) {
      const BenchRun& kept = there.front().run;
      if (kept.trial_uid == run.trial_uid && kept.to_cut == run.to_cut) return std::nullopt;
      return base::Problem{.kind = base::ProblemKind::conflicting,
                           .sentence = "A run with this id was begun, and it is another.",
                           .accepted = "a new id for each run"};
    }
    SQLite::Statement trial(database, "SELECT 1 FROM trial WHERE uid = ?");
    trial.bind(1, run.trial_uid);
    if (!trial.executeStep()) {
      return base::Problem{.kind = base::ProblemKind::unknown_name,
                           .sentence = "The notebook has no such trial.",
                           .accepted = "a trial of this notebook"};
    }
    RowWriter writer(database, "bench_run");
    writer.insert({writer.next_key(),
                   run.uid,
                   run.trial_uid,
                   run.to_cut.name,
                   as_whole(run.to_cut.arm),
                   run.to_cut.specimen,
                   std::int64_t{run.to_cut.block},
                   cell_or_null(run.to_cut.order),
                   run.begun_at_utc,
                   run.who});
    transaction.commit();
    return std::nullopt;
  });
}

std::vector<std::optional<base::Problem>> keep_entries(Notebook& notebook,
                                                       std::span<const ArrivedEntries> arrived) {
  SQLite::Database& database = notebook.file().database;
  return carrying_over([&] {
    std::vector<std::optional<base::Problem>> problems;
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    Keeping keeping(database);
    problems.reserve(arrived.size());
    for (const ArrivedEntries& entries : arrived) problems.push_back(keeping.keep(entries));
    transaction.commit();
    return problems;
  });
}

std::vector<BenchRun> bench_runs_of(const Notebook& notebook, const std::string& trial_uid) {
  const Cell value = trial_uid;
  return runs_kept(notebook.file(), "WHERE trial_uid = ?", std::span(&value, 1));
}

std::vector<BenchRun> bench_runs_in_block(const Notebook& notebook,
                                          const std::string& trial_uid,
                                          int block) {
  const std::array<Cell, 2> values{trial_uid, std::int64_t{block}};
  return runs_kept(notebook.file(), "WHERE trial_uid = ? AND block = ?", values);
}

std::vector<BenchRun> all_bench_runs(const Notebook& notebook) {
  return runs_kept(notebook.file(), "", {});
}

std::optional<BenchRun> bench_run(const Notebook& notebook, const std::string& uid) {
  NotebookFile& file = notebook.file();
  if (file.version < kVersion) return std::nullopt;
  return seen_at_once(file.database, [&]() -> std::optional<BenchRun> {
    std::vector<RunRow> found = runs_with_uid(file.database, uid);
    if (found.empty()) return std::nullopt;
    return std::move(found.front().run);
  });
}

base::Result<JournalEntry> put_in_trial(Notebook& notebook,
                                        const trials::Trial& of_the_run,
                                        const Authorship& by) {
  base::require(of_the_run.runs.size() == 1, "one run is put into its trial");
  const TrialToWrite to_write{.rows = {.trial = of_the_run}};
  return change(notebook.file(),
                {.what = "cut " + words_of(of_the_run.runs.front()) + " in " + of_the_run.name},
                by,
                [&](SQLite::Database& database) -> std::optional<base::Problem> {
                  WrittenTrial written = write_trial(database, to_write, random_uid);
                  if (written.problems.empty()) return std::nullopt;
                  return std::move(written.problems.front());
                });
}

std::optional<base::Problem> problem_of(const Notebook& notebook, const ArrivedEntries& arrived) {
  SQLite::Database& database = notebook.file().database;
  return seen_at_once(database, [&]() -> std::optional<base::Problem> {
    const auto key = key_of_run(database, arrived.run_uid);
    if (!key) return no_such_bench_run(arrived.run_uid);
    for (const bench::Entry& entry : arrived.entries) {
      const auto kept = kept_entry(database, entry.id);
      if (kept && *kept != KeptEntry{*key, cells_of(entry)}) return says_otherwise(entry.id);
    }
    return std::nullopt;
  });
}

}  // namespace keenfall::notebook
