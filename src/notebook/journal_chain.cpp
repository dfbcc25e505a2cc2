#include "notebook/journal_chain.h"

#include "notebook/notebook_failure.h"
#include "notebook/row_checksum.h"

#include <algorithm>

namespace keenfall::notebook {

namespace {

Cell cell_of_text(const SQLite::Column& column) {
  return std::string(column.getText(), static_cast<std::size_t>(column.getBytes()));
}

std::string bytes_of(const SQLite::Column& column) {
  const auto* bytes = static_cast<const char*>(column.getBlob());
  return bytes == nullptr ? std::string()
                          : std::string(bytes, static_cast<std::size_t>(column.getBytes()));
}

bool same(const Digest& digest, const std::string& bytes) {
  return std::ranges::equal(digest, bytes, [](std::uint8_t one, char other) {
    return one == static_cast<std::uint8_t>(other);
  });
}

}  // namespace

Digest hash_of_entry(const Digest& before,
                     const JournalEntry& entry,
                     const std::string& changeset) {
  std::string bytes(before.begin(), before.end());
  for (const Cell& part : {Cell(entry.entry),
                           Cell(entry.client_id),
                           Cell(entry.at_utc),
                           Cell(entry.who),
                           Cell(entry.what),
                           Cell(entry.why),
                           cell_or_null(entry.undoes)}) {
    append_cell(bytes, part);
  }
  append_blob(bytes, changeset);
  return sha256_of(bytes);
}

void append_to_chain(SQLite::Database& database,
                     const JournalEntry& entry,
                     const std::string& changeset) {
  Digest before{};
  SQLite::Statement last(database, "SELECT hash FROM journal WHERE entry = ?");
  last.bind(1, entry.entry - 1);
  if (last.executeStep()) {
    const std::string bytes = bytes_of(last.getColumn(0));
    if (bytes.size() != before.size()) {
      throw NotebookDamaged("the journal's last hash is not as it was written");
    }
    std::ranges::transform(
        bytes, before.begin(), [](char byte) { return static_cast<std::uint8_t>(byte); });
  }
  const Digest hash = hash_of_entry(before, entry, changeset);
  SQLite::Statement insert(database, "INSERT INTO journal VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)");
  insert.bind(1, entry.entry);
  insert.bind(2, entry.client_id);
  insert.bind(3, entry.at_utc);
  insert.bind(4, entry.who);
  insert.bind(5, entry.what);
  insert.bind(6, entry.why);
  if (entry.undoes) insert.bind(7, *entry.undoes);
  insert.bind(8, changeset.data(), static_cast<int>(changeset.size()));
  insert.bind(9, hash.data(), static_cast<int>(hash.size()));
  insert.exec();
}

std::string first_break(
    SQLite::Database& database,
    const std::function<void(const JournalEntry&, const std::string& changeset)>& use) {
  SQLite::Statement rows(database, "SELECT * FROM journal ORDER BY entry");
  Digest before{};
  std::int64_t expected = 0;
  while (rows.executeStep()) {
    JournalEntry entry{.entry = rows.getColumn(0).getInt64()};
    if (entry.entry != ++expected) {
      return "entry " + std::to_string(expected) + " of the journal is missing";
    }
    std::string JournalEntry::*const texts[] = {&JournalEntry::client_id,
                                                &JournalEntry::at_utc,
                                                &JournalEntry::who,
                                                &JournalEntry::what,
                                                &JournalEntry::why};
    for (int i = 0; i < 5; ++i) {
      entry.*texts[i] = std::get<std::string>(cell_of_text(rows.getColumn(i + 1)));
    }
    if (!rows.getColumn(6).isNull()) entry.undoes = rows.getColumn(6).getInt64();
    const std::string changeset = bytes_of(rows.getColumn(7));
    const Digest hash = hash_of_entry(before, entry, changeset);
    if (!same(hash, bytes_of(rows.getColumn(8)))) {
      return "entry " + std::to_string(entry.entry) +
             " of the journal is not as it was written, or one before it is not";
    }
    use(entry, changeset);
    before = hash;
  }
  return {};
}

}  // namespace keenfall::notebook
