// The journal: each change with its entry, the chain of hashes, and undoing.
#include "notebook/changeset.h"
#include "notebook/journal_chain.h"
#include "notebook/notebook_failure.h"
#include "notebook/notebook_file.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <utility>

namespace keenfall::notebook {

namespace {

const std::string kUndo = "undo: ";
const std::string kRedo = "redo: ";

std::vector<JournalEntry>::const_iterator find_entry(const std::vector<JournalEntry>& journal,
                                                     std::int64_t entry) {
  return std::ranges::find(journal, entry, &JournalEntry::entry);
}

// An entry holds unless a later one that holds undoes it.
void mark_undone(std::vector<JournalEntry>& journal) {
  for (auto later = journal.rbegin(); later != journal.rend(); ++later) {
    if (!later->undoes || later->undone_by) continue;
    const auto target = std::ranges::find(journal, *later->undoes, &JournalEntry::entry);
    if (target != journal.end()) target->undone_by = later->entry;
  }
}

// Which column of a table refers to which other table.
using References = std::map<std::string, std::map<std::size_t, std::string>>;

References references_of(SQLite::Database& database) {
  References references;
  for (const TableText& table : tables_of_schema()) {
    const std::string name(table.name);
    const TableLayout layout = layout_of(database, name);
    SQLite::Statement keys(database, "PRAGMA foreign_key_list(" + name + ")");
    while (keys.executeStep()) {
      const auto column = std::ranges::find(layout.columns, keys.getColumn("from").getString());
      references[name][static_cast<std::size_t>(column - layout.columns.begin())] =
          keys.getColumn("table").getString();
    }
  }
  return references;
}

std::string row_name(const std::string& table, const std::vector<Cell>& key) {
  std::string name = table;
  for (const Cell& part : key) {
    name += '\x1f';
    if (const auto* whole = std::get_if<std::int64_t>(&part)) name += std::to_string(*whole);
    if (const auto* text = std::get_if<std::string>(&part)) name += *text;
  }
  return name;
}

std::string changeset_of(SQLite::Database& database, std::int64_t entry) {
  SQLite::Statement read(database, "SELECT changeset FROM journal WHERE entry = ?");
  read.bind(1, entry);
  if (!read.executeStep()) throw NotebookDamaged("an entry of the journal is missing");
  const SQLite::Column column = read.getColumn(0);
  return {static_cast<const char*>(column.getBlob()), static_cast<std::size_t>(column.getBytes())};
}

void each_change_of(SQLite::Database& database,
                    std::int64_t entry,
                    const std::function<void(const RowChange&)>& use) {
  if (!each_row_change(changeset_of(database, entry), use)) {
    throw NotebookDamaged("the journal's record of entry " + std::to_string(entry) + " is damaged");
  }
}

// Later entries that hold and touch the rows of `entry`, or refer to them. What was undone later
// than it, and the undoing, come to nothing together.
std::vector<std::int64_t> that_rest_on(SQLite::Database& database,
                                       const std::vector<JournalEntry>& journal,
                                       std::int64_t entry) {
  std::set<std::string> touched;
  each_change_of(database, entry, [&](const RowChange& change) {
    touched.insert(row_name(change.table, change.key));
  });
  const References references = references_of(database);
  std::vector<std::int64_t> resting;
  for (const JournalEntry& later : journal) {
    const bool undoes_a_later_one = later.undoes && *later.undoes > entry;
    if (later.entry <= entry || later.undone_by || undoes_a_later_one) continue;
    bool rests = false;
    each_change_of(database, later.entry, [&](const RowChange& change) {
      rests = rests || touched.contains(row_name(change.table, change.key));
      const auto columns = references.find(change.table);
      if (columns == references.end()) return;
      for (const auto& [column, now] : change.new_cells) {
        const auto other = columns->second.find(column);
        rests = rests || (other != columns->second.end() &&
                          touched.contains(row_name(other->second, {now})));
      }
    });
    if (rests) resting.push_back(later.entry);
  }
  return resting;
}

bool is_known(SQLite::Database& database, const std::string& client_id) {
  SQLite::Statement find(database, "SELECT 1 FROM journal WHERE client_id = ?");
  find.bind(1, client_id);
  return find.executeStep();
}

base::Problem refused(const std::string& sentence, const std::string& accepted) {
  return {.kind = base::ProblemKind::conflicting, .sentence = sentence, .accepted = accepted};
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

}  // namespace

std::vector<JournalEntry> journal_of(SQLite::Database& database) {
  std::vector<JournalEntry> journal;
  SQLite::Statement rows(database,
                         "SELECT entry, client_id, at_utc, who, what, why, undoes FROM journal "
                         "ORDER BY entry");
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

base::Result<JournalEntry> change(NotebookFile& file,
                                  const ChangeWords& words,
                                  const Authorship& by,
                                  const Writing& writing) {
  base::require(file.lock.has_value(), "a change is made by the writer");
  base::require(!by.client_id.empty(), "a change has a client id");
  SQLite::Database& database = file.database;
  try {
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    if (is_known(database, by.client_id)) {
      const std::vector<JournalEntry> journal = journal_of(database);
      return *std::ranges::find(journal, by.client_id, &JournalEntry::client_id);
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
    if (changeset.empty()) {
      return base::failed(refused("Nothing would change.", "a change that is not there yet"));
    }
    append_to_chain(database, entry, changeset);
    transaction.commit();
    return entry;
  } catch (const SQLite::Exception& failure) {
    throw_as_failure(failure);
  }
}

std::optional<std::int64_t> Notebook::last_to_undo() const {
  const std::vector<JournalEntry> all = journal();
  for (auto entry = all.rbegin(); entry != all.rend(); ++entry) {
    if (!entry->undoes && !entry->undone_by) return entry->entry;
  }
  return std::nullopt;
}

base::Result<JournalEntry> Notebook::undo(std::int64_t entry, const Authorship& by) {
  const std::vector<JournalEntry> all = journal();
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
  const bool is_redo = found->what.starts_with(kUndo);
  const ChangeWords words{
      .what = is_redo ? kRedo + found->what.substr(kUndo.size()) : kUndo + found->what,
      .undoes = entry};
  return change(*file_, words, by, [&](SQLite::Database& database) -> std::optional<base::Problem> {
    const auto resting = that_rest_on(database, all, entry);
    if (!resting.empty()) {
      return refused("Entry " + std::to_string(entry) + " (" + found->what +
                         ") cannot be undone: later entries rest on it: " + listed(resting, all) +
                         ".",
                     "undoing those first");
    }
    if (!apply_changeset(database, inverse_of(changeset_of(database, entry)))) {
      throw NotebookDamaged("the rows are not as the journal left them");
    }
    return std::nullopt;
  });
}

}  // namespace keenfall::notebook
