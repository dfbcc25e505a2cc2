// The journal: each change with its entry, the chain of hashes, and undoing.
#include "base/require.h"
#include "notebook/changeset.h"
#include "notebook/check.h"
#include "notebook/journal_chain.h"
#include "notebook/notebook_failure.h"
#include "notebook/notebook_file.h"
#include "notebook/resting_entries.h"
#include "notebook/sealing.h"

#include <algorithm>
#include <set>
#include <string>
#include <utility>

namespace keenfall::notebook {

namespace {

const std::string kUndo = "undo: ";
const std::string kRedo = "redo: ";

// Entries are in their order.
std::vector<JournalEntry>::const_iterator find_entry(const std::vector<JournalEntry>& journal,
                                                     std::int64_t entry) {
  const auto found = std::ranges::lower_bound(journal, entry, {}, &JournalEntry::entry);
  return found != journal.end() && found->entry == entry ? found : journal.end();
}

// An entry holds unless a later one that holds undoes it.
void mark_undone(std::vector<JournalEntry>& journal) {
  for (auto later = journal.rbegin(); later != journal.rend(); ++later) {
    if (!later->undoes || later->undone_by) continue;
    const auto target = find_entry(journal, *later->undoes);
    if (target != journal.end()) {
      journal[static_cast<std::size_t>(target - journal.begin())].undone_by = later->entry;
    }
  }
}

// Does the entry add nothing but a look?
bool is_only_a_look(SQLite::Database& database, std::int64_t entry) {
  return carrying_over([&] {
    return !any_row_change_of(
        database, entry, [](const RowChange& change) { return !is_of_looks(change.table); });
  });
}

bool is_known(SQLite::Database& database, const std::string& client_id) {
  SQLite::Statement find(database, "SELECT 1 FROM journal WHERE client_id = ?");
  find.bind(1, client_id);
  return find.executeStep();
}

base::Problem refused(const std::string& sentence, const std::string& accepted) {
  return {.kind = base::ProblemKind::conflicting, .sentence = sentence, .accepted = accepted};
}

std::string cannot_be_undone(const JournalEntry& entry) {
  return "Entry " + std::to_string(entry.entry) + " (" + entry.what + ") cannot be undone: ";
}

std::string listed(const std::vector<std::int64_t>& entries,
                   const std::vector<JournalEntry>& journal) {
  constexpr std::size_t kMostNamed = 5;
  std::string text;
  for (std::size_t i = 0; i < entries.size() && i < kMostNamed; ++i) {
    text += (i > 0 ? "; " : "") + std::to_string(entries[i]) + " (" +
            find_entry(journal, entries[i])->what + ")";
  }
  if (entries.size() > kMostNamed) {
    text += "; and " + std::to_string(entries.size() - kMostNamed) + " more";
  }
  return text;
}

// Whoever may read only finds in the log's index how far the last reader saw, and sees no further:
// so this one looks (SQLite's wal.c, walTryBeginRead). That the change is kept does not depend on
// it.
void show_to_all(SQLite::Database& database) {
  (void)sqlite3_exec(database.getHandle(), "PRAGMA user_version", nullptr, nullptr, nullptr);
}

// From an entry on; what came before says nothing of whether those hold.
std::vector<JournalEntry> journal_from(SQLite::Database& database, std::int64_t first) {
  std::vector<JournalEntry> journal;
  SQLite::Statement rows(database,
                         "SELECT entry, client_id, at_utc, who, what, why, undoes FROM journal "
                         "WHERE entry >= ? ORDER BY entry");
  rows.bind(1, first);
  while (rows.executeStep()) {
    JournalEntry entry{.entry = rows.getColumn(0).getInt64(),
                       .client_id = rows.getColumn(1).getString(),
                       .at_utc = rows.getColumn(2).getString(),
                       .who = rows.getColumn(3).getString(),
                       .what = rows.getColumn(4).getString(),
                       .why = rows.getColumn(5).getString()};
    if (!rows.getColumn(6).isNull()) entry.undoes = rows.getColumn(6).getInt64();
    journal.push_back(std::move(entry));
  }
  mark_undone(journal);
  return journal;
}

}  // namespace

std::vector<JournalEntry> journal_of(SQLite::Database& database) {
  constexpr std::int64_t kFirst = 1;
  return journal_from(database, kFirst);
}

base::Result<JournalEntry> change(NotebookFile& file,
                                  const ChangeWords& words,
                                  const Authorship& by,
                                  const Writing& writing) {
  const auto entry = change_if_any(file, words, by, writing);
  if (!entry) return base::failed(entry.error());
  if (*entry) return **entry;
  return base::failed(refused("Nothing would change.", "a change that is not there yet"));
}

base::Result<std::optional<JournalEntry>> change_if_any(NotebookFile& file,
                                                        const ChangeWords& words,
                                                        const Authorship& by,
                                                        const Writing& writing) {
  using Entry = std::optional<JournalEntry>;
  base::require(file.lock.has_value(), "a change is made by the writer");
  base::require(!by.client_id.empty(), "a change has a client id");
  return carrying_over([&]() -> base::Result<Entry> {
    SQLite::Database& database = file.database;
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    if (auto problem = file.lock->problem()) return base::failed(std::move(*problem));
    if (is_known(database, by.client_id)) {
      const std::vector<JournalEntry> journal = journal_of(database);
      return Entry(*std::ranges::find(journal, by.client_id, &JournalEntry::client_id));
    }
    Recording recording(database);
    if (auto problem = writing(database)) return base::failed(std::move(*problem));
    const SQLite::Column last = database.execAndGet("SELECT coalesce(max(entry), 0) FROM journal");
    JournalEntry entry{.entry = last.getInt64() + 1,
                       .client_id = by.client_id,
                       .at_utc = by.at_utc,
                       .who = by.who,
                       .what = words.what,
                       .why = by.why,
                       .undoes = words.undoes};
    const std::string changeset = recording.changeset();
    if (changeset.empty()) return Entry();
    append_to_chain(database, entry, changeset);
    if (auto problem = file.lock->problem()) return base::failed(std::move(*problem));
    transaction.commit();
    show_to_all(database);
    return Entry(entry);
  });
}

JournalPlace Notebook::last_place() const {
  return carrying_over([&]() -> JournalPlace {
    SQLite::Statement newest(file_->database,
                             "SELECT entry, client_id FROM journal ORDER BY entry DESC LIMIT 1");
    if (!newest.executeStep()) return {};
    return {.entry = newest.getColumn(0).getInt64(), .client_id = newest.getColumn(1).getString()};
  });
}

std::optional<std::int64_t> Notebook::last_to_undo() const {
  SQLite::Database& database = file_->database;
  return carrying_over([&]() -> std::optional<std::int64_t> {
    SQLite::Statement rows(database, "SELECT entry, undoes FROM journal ORDER BY entry DESC");
    std::set<std::int64_t> undone;
    while (rows.executeStep()) {
      const std::int64_t entry = rows.getColumn(0).getInt64();
      if (undone.contains(entry)) continue;
      if (!rows.getColumn(1).isNull()) {
        undone.insert(rows.getColumn(1).getInt64());
      } else if (!is_only_a_look(database, entry)) {
        return entry;
      }
    }
    return std::nullopt;
  });
}

base::Result<JournalEntry> Notebook::undo(std::int64_t entry, const Authorship& by) {
  const std::vector<JournalEntry> all =
      carrying_over([&] { return journal_from(file_->database, entry); });
  const auto found = find_entry(all, entry);
  if (found == all.end()) {
    return base::failed(refused("There is no entry " + std::to_string(entry) + " in the journal.",
                                "an entry that keenfall log lists"));
  }
  if (found->undone_by) {
    return base::failed(refused("Entry " + std::to_string(entry) +
                                    " was undone already, by entry " +
                                    std::to_string(*found->undone_by) + ".",
                                "undoing that one, to have it back"));
  }
  if (is_only_a_look(file_->database, entry)) {
    return base::failed(
        refused(cannot_be_undone(*found) + "what was seen was seen, and looks are counted.",
                "an entry that changed what is recorded"));
  }
  const bool is_redo = found->what.starts_with(kUndo);
  const ChangeWords words{
      .what = is_redo ? kRedo + found->what.substr(kUndo.size()) : kUndo + found->what,
      .undoes = entry};
  bool fits = true;
  auto undone =
      change(*file_, words, by, [&](SQLite::Database& database) -> std::optional<base::Problem> {
        const auto resting = entries_resting_on(database, all, entry);
        if (!resting.empty()) {
          return refused(cannot_be_undone(*found) + "later entries " +
                             (is_redo ? "stand in its way: " : "rest on it: ") +
                             listed(resting, all) + ".",
                         "undoing those first");
        }
        if (const auto trial = trial_whose_sealing_holds(database, all, entry)) {
          return refused(cannot_be_undone(*found) + "the trial " + *trial +
                             " has been read since, and what was sealed before that stays sealed.",
                         "a new trial with another plan; or undoing first what brought them");
        }
        fits = apply_changeset(database, inverse_of(changeset_of(database, entry)));
        if (fits) return std::nullopt;
        return refused(
            cannot_be_undone(*found) + "what it would bring back does not fit what is here now.",
            "undoing later entries first");
      });
  if (!fits && !check(*this).empty()) {
    throw NotebookDamaged("the rows are not as the journal left them");
  }
  return undone;
}

}  // namespace keenfall::notebook
