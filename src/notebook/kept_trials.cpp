#include "notebook/kept_trials.h"

#include "notebook/notebook_failure.h"
#include "notebook/notebook_file.h"
#include "notebook/random_uid.h"
#include "notebook/trial_reader.h"
#include "notebook/trial_writer.h"
#include "notebook/watched_taking.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <utility>

namespace keenfall::notebook {

namespace {

std::string what_was_taken(const trials::Trial& trial, const std::vector<TakenTable>& tables) {
  std::string names;
  for (const TakenTable& table : tables) names += (names.empty() ? "" : ", ") + table.file_name;
  const bool is_in_part = std::ranges::any_of(tables, &TakenTable::is_in_part);
  return "take " + (names.empty() ? "a trial" : names) + " into " + trial.name +
         (is_in_part ? ", in part" : "");
}

// For what is only tried: nobody sees them, and a large trial needs many.
NewUid numbered_uids() {
  return [last = std::uint64_t{0}]() mutable {
    constexpr std::size_t kDigits = 32;
    const std::string number = std::to_string(++last);
    return std::string(kDigits - number.size(), '0') + number;
  };
}

// Of the only row that is asked for.
std::optional<std::string> text_where(const Notebook& notebook,
                                      const std::string& query,
                                      const std::string& wanted) {
  return carrying_over([&]() -> std::optional<std::string> {
    SQLite::Statement row(notebook.file().database, query);
    row.bind(1, wanted);
    if (!row.executeStep()) return std::nullopt;
    return row.getColumn(0).getString();
  });
}

}  // namespace

base::ResultOrProblems<Taken> take(Notebook& notebook,
                                   trials::Trial trial,
                                   const std::vector<TakenTable>& tables,
                                   const Authorship& by) {
  return take(notebook, std::move(trial), tables, by, base::unwatched());
}

base::ResultOrProblems<Taken> take(Notebook& notebook,
                                   trials::Trial trial,
                                   const std::vector<TakenTable>& tables,
                                   const Authorship& by,
                                   const base::ProgressReport& progress) {
  using Problems = std::vector<base::Problem>;
  Taken taken;
  NotebookFile& file = notebook.file();
  const std::string what = what_was_taken(trial, tables);
  // What is left makes the journal's entry and brings all to the disk, in steps not told of.
  constexpr double kWritten = 0.6;
  const auto writing = [&progress](const base::Progress& told) {
    return progress(
        {.fraction_done = told.fraction_done * kWritten, .stage = "writing the runs down"});
  };
  const TrialToWrite to_write{
      .rows = {.trial = std::move(trial)}, .tables = tables, .progress = writing};
  Problems problems;
  const auto entry = change_if_any(
      file, {.what = what}, by, [&](SQLite::Database& database) -> std::optional<base::Problem> {
        WrittenTrial written = write_trial(database, to_write, random_uid);
        taken = written.taken;
        taken.remarks = std::move(written.remarks);
        problems = std::move(written.problems);
        const bool goes_on = !problems.empty() || progress({.fraction_done = kWritten,
                                                            .stage = "bringing it to the disk"});
        if (!goes_on) problems.push_back(taking_stopped());
        if (problems.empty()) return std::nullopt;
        return problems.front();
      });
  if (!entry) {
    return tl::unexpected<Problems>(problems.empty() ? Problems{entry.error()} : problems);
  }
  taken.entry = *entry;
  return taken;
}

base::ResultOrProblems<Taken> would_take(const Notebook& notebook,
                                         trials::Trial trial,
                                         const std::vector<TakenTable>& tables) {
  return would_take(notebook, std::move(trial), tables, base::unwatched());
}

base::ResultOrProblems<Taken> would_take(const Notebook& notebook,
                                         trials::Trial trial,
                                         const std::vector<TakenTable>& tables,
                                         const base::ProgressReport& progress) {
  const Notebook copy = notebook.temporary_copy();
  const TrialToWrite to_write{
      .rows = {.trial = std::move(trial)}, .tables = tables, .progress = progress};
  WrittenTrial written = carrying_over([&] {
    SQLite::Transaction rolled_back(copy.file().database);
    return write_trial(copy.file().database, to_write, numbered_uids());
  });
  if (!written.problems.empty()) return tl::unexpected(std::move(written.problems));
  written.taken.remarks = std::move(written.remarks);
  return std::move(written.taken);
}

std::optional<std::string> trial_name_of(const Notebook& notebook, const std::string& uid) {
  return text_where(notebook, "SELECT name FROM trial WHERE uid = ?", uid);
}

std::optional<std::string> trial_uid_of(const Notebook& notebook, const std::string& name) {
  return text_where(notebook, "SELECT uid FROM trial WHERE name = ?", name);
}

std::vector<std::string> trial_names(const Notebook& notebook) {
  return carrying_over([&] {
    return texts_in(notebook.file().database, "SELECT name FROM trial ORDER BY trial_id");
  });
}

std::vector<KeptTrial> kept_trials(const Notebook& notebook) {
  return carrying_over([&] {
    std::vector<KeptTrial> kept;
    SQLite::Statement rows(notebook.file().database,
                           "SELECT uid, name, (SELECT count(*) FROM run WHERE run.trial_id = "
                           "trial.trial_id), (SELECT count(*) FROM run JOIN reading USING (run_id) "
                           "WHERE run.trial_id = trial.trial_id) FROM trial ORDER BY trial_id");
    while (rows.executeStep()) {
      kept.push_back({.uid = rows.getColumn(0).getString(),
                      .name = rows.getColumn(1).getString(),
                      .runs = static_cast<std::size_t>(rows.getColumn(2).getInt64()),
                      .readings = static_cast<std::size_t>(rows.getColumn(3).getInt64())});
    }
    return kept;
  });
}

base::Result<trials::Trial> kept_trial(const Notebook& notebook, const std::string& name) {
  auto rows = seen_at_once(notebook.file().database,
                           [&] { return read_trial(notebook.file().database, name); });
  if (rows) return std::move(rows->trial);
  std::string names;
  for (const std::string& kept : trial_names(notebook)) {
    names += (names.empty() ? "" : ", ") + kept;
  }
  return base::failed({.kind = base::ProblemKind::unknown_name,
                       .sentence = "The notebook has no trial called \"" + name + "\".",
                       .place = {.file = notebook.path()},
                       .accepted = names.empty() ? "a trial; the notebook has none yet" : names});
}

}  // namespace keenfall::notebook
