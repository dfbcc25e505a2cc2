// The chain of hashes that ties every journal entry to all before it. Private to the folder.
#pragma once

#include "notebook/digest.h"
#include "notebook/notebook.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <functional>
#include <string>

namespace keenfall::notebook {

// Of an entry, given the hash of the one before; zeros before the first.
[[nodiscard]] Digest hash_of_entry(const Digest& before,
                                   const JournalEntry& entry,
                                   const std::string& changeset);

void append_to_chain(SQLite::Database& database,
                     const JournalEntry& entry,
                     const std::string& changeset);

// Goes through the journal from its first entry; the sentence on the first that does not follow
// from the one before; empty: all do. `use` sees every changeset that does.
[[nodiscard]] std::string first_break(
    SQLite::Database& database,
    const std::function<void(const JournalEntry&, const std::string& changeset)>& use);

}  // namespace keenfall::notebook
