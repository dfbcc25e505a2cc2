#include "notebook/looks.h"

#include "notebook/look_rows.h"
#include "notebook/notebook_failure.h"
#include "notebook/notebook_file.h"
#include "notebook/random_uid.h"

#include <algorithm>
#include <optional>
#include <set>
#include <utility>

namespace keenfall::notebook {

namespace {

const std::string kLookAt = "look at ";  // begins what the journal says of one

std::optional<std::string> uid_of_trial(SQLite::Database& database, const std::string& name) {
  SQLite::Statement find(database, "SELECT uid FROM trial WHERE name = ?");
  find.bind(1, name);
  if (!find.executeStep()) return std::nullopt;
  return find.getColumn(0).getString();
}

std::vector<Look> looks_in(SQLite::Database& database, const std::string& trial_uid) {
  std::vector<Look> looks;
  for (LookRow& row : read_looks(database, trial_uid)) looks.push_back(std::move(row.look));
  return looks;
}

}  // namespace

std::vector<Look> looks_at(const Notebook& notebook, const std::string& trial) {
  NotebookFile& file = notebook.file();
  if (file.version < 2) return {};
  return seen_at_once(file.database, [&] {
    const auto uid = uid_of_trial(file.database, trial);
    return uid ? looks_in(file.database, *uid) : std::vector<Look>();
  });
}

bool is_look(const JournalEntry& entry) { return entry.what.starts_with(kLookAt); }

LookCount count_of(const std::vector<Look>& looks) {
  std::set<std::string> states;
  for (const Look& look : looks) states.insert(look.judgement.inputs.sha256);
  return {.looks = looks.size(), .states = states.size()};
}

base::Result<LookCount> count_look(Notebook& notebook,
                                   const std::string& trial,
                                   const StoredJudgement& judgement,
                                   const Authorship& by) {
  LookCount count;
  const auto entry =
      change(notebook.file(),
             {.what = kLookAt + trial},
             by,
             [&](SQLite::Database& database) -> std::optional<base::Problem> {
               const auto uid = uid_of_trial(database, trial);
               if (!uid) {
                 return base::Problem{
                     .kind = base::ProblemKind::unknown_name,
                     .sentence = "The notebook has no trial called \"" + trial + "\" any more.",
                     .accepted = "a trial that keenfall show lists"};
               }
               RowWriters writers(database);
               write_look(database,
                          writers,
                          *uid,
                          {.uid = random_uid(),
                           .judgement_uid = random_uid(),
                           .look = {.at_utc = by.at_utc, .who = by.who, .judgement = judgement}});
               count = count_of(looks_in(database, *uid));
               return std::nullopt;
             });
  if (!entry) return base::failed(entry.error());
  count.entry = entry->entry;
  return count;
}

bool has_changed_since(const Notebook& notebook, std::int64_t entry) {
  return std::ranges::any_of(notebook.journal(), [entry](const JournalEntry& later) {
    return later.entry > entry && !is_look(later);
  });
}

}  // namespace keenfall::notebook
