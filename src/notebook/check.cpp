#include "notebook/check.h"

#include "notebook/changeset.h"
#include "notebook/journal_chain.h"
#include "notebook/notebook_failure.h"
#include "notebook/notebook_file.h"
#include "notebook/rows.h"
#include "notebook/schema.h"

#include <cstdint>
#include <cstdlib>
#include <map>
#include <string>
#include <string_view>
#include <variant>

namespace keenfall::notebook {

namespace {

constexpr std::size_t kMostFindings = 100;

using Checksums = std::map<std::vector<Cell>, std::int64_t>;  // by key

// integrity_check says "Page 7: unable to get the page. error code=266" where a page cannot be
// read; the last byte of the code is SQLITE_IOERR (10) then.
bool tells_of_failed_disk(const std::string& words) {
  constexpr std::string_view kCode = "error code=";
  constexpr int kDiskFailed = 10;
  const std::size_t found = words.find(kCode);
  return found != std::string::npos &&
         (std::strtol(words.c_str() + found + kCode.size(), nullptr, 10) & 0xFF) == kDiskFailed;
}

class Checking {
 public:
  Checking(SQLite::Database& database, std::int64_t version)
      : database_(database), version_(version) {}

  std::vector<std::string> findings() {
    structure();
    chain();
    identity();
    rows();
    return std::move(findings_);
  }

  std::vector<std::string> findings_of_content() {
    structure();
    rows();
    return std::move(findings_);
  }

 private:
  void rows() {
    for (const TableText& table : tables_of_schema(version_)) {
      if (table.name != "journal") rows_of(std::string(table.name));
    }
  }

  void find(const std::string& sentence) {
    if (findings_.size() < kMostFindings) findings_.push_back(sentence);
  }

  // What throws is itself a finding: the rest is looked at all the same.
  template <class Work>
  void looking_at(const std::string& what, Work work) {
    try {
      work();
    } catch (const SQLite::Exception& failure) {
      find(what + " cannot be read: " + failure.what() + ".");
    } catch (const NotebookFailure& failure) {
      find(what + ": " + failure.what() + ".");
    }
  }

  void structure() {
    looking_at("The file", [&] {
      SQLite::Statement pages(database_, "PRAGMA integrity_check(20)");
      while (pages.executeStep()) {
        const std::string words = pages.getColumn(0).getString();
        if (words == "ok") continue;
        if (tells_of_failed_disk(words)) {
          find("The file cannot be read: the disk failed.");
        } else {
          find("The file's structure: " +
               words.substr(words.starts_with("***") ? words.find('\n') + 1 : 0) + ".");
        }
      }
    });
    looking_at("The references", [&] {
      SQLite::Statement references(database_, "PRAGMA foreign_key_check");
      while (references.executeStep()) {
        find("A row of the table " + references.getColumn(0).getString() + " refers to one of " +
             references.getColumn(2).getString() + " that is not there.");
      }
    });
  }

  void chain() {
    looking_at("The journal", [&] {
      const std::string broken =
          first_break(database_, [&](const JournalEntry& entry, const std::string& changeset) {
            const bool whole =
                each_row_change(changeset, [&](const RowChange& change) { follow(change); });
            if (!whole) {
              find("Entry " + std::to_string(entry.entry) + " of the journal cannot be read.");
            }
          });
      if (!broken.empty()) find("The journal's chain is broken: " + broken + ".");
      chain_holds_ = broken.empty();
    });
  }

  void identity() {
    looking_at("The table notebook", [&] {
      const int rows = database_.execAndGet("SELECT count(*) FROM notebook").getInt();
      if (rows == 1) return;
      find("The table notebook: it has " + std::to_string(rows) +
           " rows, and a notebook has one there, which says whose it is.");
    });
  }

  // What the journal says the tables hold.
  void follow(const RowChange& change) {
    Checksums& kept = expected_[change.table];
    if (change.kind == RowChangeKind::deleted) {
      kept.erase(change.key);
      return;
    }
    if (change.new_cells.empty()) return;
    if (const auto* checksum = std::get_if<std::int64_t>(&change.new_cells.back().second)) {
      kept[change.key] = *checksum;
    }
  }

  void rows_of(const std::string& table) {
    looking_at("The table " + table, [&] {
      const TableLayout layout = layout_of(database_, table);
      SQLite::Statement rows(database_, "SELECT * FROM " + table);
      RowChecksum checksum;
      Checksums left = std::move(expected_[table]);
      std::size_t damaged = 0;
      std::size_t unknown = 0;
      while (rows.executeStep()) {
        const RowRead read = row_read(rows, table, checksum);
        damaged += read.is_whole ? 0 : 1;
        std::vector<Cell> key;
        for (const std::size_t place : layout.key) key.push_back(read.row[place]);
        const auto found = left.find(key);
        const std::int64_t own = rows.getColumn(rows.getColumnCount() - 1).getInt64();
        if (found == left.end() || found->second != own) ++unknown;
        if (found != left.end()) left.erase(found);
      }
      if (damaged > 0) say(table, damaged, "not as written: the checksum does not fit");
      if (!chain_holds_ || table == "notebook" || is_beside_the_journal(table)) return;
      if (unknown > 0) say(table, unknown, "other than the journal left them");
      if (!left.empty()) say(table, left.size(), "missing, by the journal");
    });
  }

  void say(const std::string& table, std::size_t rows, const std::string& what) {
    find("The table " + table + ": " + std::to_string(rows) +
         (rows == 1 ? " row is " : " rows are ") + what + ".");
  }

  SQLite::Database& database_;
  std::int64_t version_;
  std::vector<std::string> findings_;
  std::map<std::string, Checksums> expected_;
  bool chain_holds_ = false;
};

}  // namespace

std::vector<std::string> check(const Notebook& notebook) {
  NotebookFile& file = notebook.file();
  return seen_at_once(file.database,
                      [&] { return Checking(file.database, file.version).findings(); });
}

std::vector<std::string> check_content(const Notebook& notebook) {
  NotebookFile& file = notebook.file();
  return seen_at_once(file.database,
                      [&] { return Checking(file.database, file.version).findings_of_content(); });
}

}  // namespace keenfall::notebook
