#include "spoiled_notebook.h"

#include "notebook/cell.h"
#include "notebook/digest.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <bit>
#include <span>
#include <vector>

namespace keenfall::fuzz {

namespace {

using notebook::Cell;
using Row = std::vector<Cell>;

constexpr int kMostChanges = 8;
constexpr int kChangesetColumn = 7;

void append_number(std::string& bytes, std::uint64_t number) {
  for (int shift = 56; shift >= 0; shift -= 8) bytes += static_cast<char>(number >> shift);
}

void append_sized(std::string& bytes, char type, std::string_view content) {
  bytes += type;
  append_number(bytes, content.size());
  bytes += content;
}

void append_checked(std::string& bytes, const Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
    bytes += 'i';
    append_number(bytes, static_cast<std::uint64_t>(*whole));
  } else if (const auto* real = std::get_if<double>(&cell)) {
    bytes += 'r';
    append_number(bytes, std::bit_cast<std::uint64_t>(*real));
  } else if (const auto* text = std::get_if<std::string>(&cell)) {
    append_sized(bytes, 't', *text);
  } else {
    bytes += 'n';
  }
}

std::int64_t checksum_of(const std::string& table, const Row& row) {
  std::string bytes = table;
  for (const Cell& cell : row) append_checked(bytes, cell);
  const notebook::Digest digest = notebook::sha256_of(bytes);
  std::uint64_t first = 0;
  for (std::size_t i = 0; i < 8; ++i) first = first << 8U | digest.at(i);
  return std::bit_cast<std::int64_t>(first);
}

Cell cell_in(const SQLite::Column& column) {
  if (column.isInteger()) return column.getInt64();
  if (column.isFloat()) return column.getDouble();
  if (column.isText() || column.isBlob()) return column.getString();
  return {};
}

Cell cell_in(InputBytes& input) {
  switch (input.place(5)) {
    case 0:
      return {};
    case 1:
      return static_cast<std::int64_t>(input.number(1));
    case 2:
      return std::bit_cast<std::int64_t>(input.number(8));
    case 3:
      return std::bit_cast<double>(input.number(8));
    default:
      return input.text();
  }
}

// In the order in which they were made.
std::vector<std::string> tables_with_checksums(SQLite::Database& database) {
  std::vector<std::string> tables;
  SQLite::Statement read(database,
                         "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE "
                         "'sqlite%' AND name <> 'journal' ORDER BY rowid");
  while (read.executeStep()) tables.push_back(read.getColumn(0).getString());
  return tables;
}

std::vector<Row> rows_of(SQLite::Database& database, const std::string& table) {
  std::vector<Row> rows;
  SQLite::Statement read(database, "SELECT * FROM " + table);
  while (read.executeStep()) {
    Row& row = rows.emplace_back();
    for (int i = 0; i < read.getColumnCount(); ++i) row.push_back(cell_in(read.getColumn(i)));
  }
  return rows;
}

void bind(SQLite::Statement& statement, int place, const Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
    statement.bind(place, *whole);
  } else if (const auto* real = std::get_if<double>(&cell)) {
    statement.bind(place, *real);
  } else if (const auto* text = std::get_if<std::string>(&cell)) {
    statement.bind(place, *text);
  } else {
    statement.bind(place);
  }
}

void insert(SQLite::Database& database, const std::string& table, const Row& row) {
  std::string marks = "?";
  for (std::size_t i = 1; i < row.size(); ++i) marks += ", ?";
  SQLite::Statement write(database, "INSERT INTO " + table + " VALUES (" + marks + ")");
  for (std::size_t i = 0; i < row.size(); ++i) bind(write, static_cast<int>(i) + 1, row[i]);
  write.exec();
}

// One change to a table's rows as the input has it.
void change(std::vector<Row>& rows, InputBytes& input) {
  if (rows.empty()) return;
  Row& row = rows.at(input.place(rows.size()));
  const std::size_t action = input.place(8);
  if (action == 0) {
    rows.erase(rows.begin() + (&row - rows.data()));
    return;
  }
  if (action == 1) {
    Row copy = row;
    copy.at(input.place(copy.size() - 1)) = cell_in(input);
    copy.at(input.place(copy.size() - 1)) = cell_in(input);
    rows.push_back(std::move(copy));
    return;
  }
  row.at(input.place(row.size() - 1)) = cell_in(input);
}

SQLite::Database opened(const std::string& path) {
  SQLite::Database database(path, SQLite::OPEN_READWRITE);
  database.exec("PRAGMA synchronous = OFF");
  database.exec("PRAGMA foreign_keys = OFF");
  database.exec("PRAGMA ignore_check_constraints = ON");
  return database;
}

// With checksums that fit; a table that SQLite refuses stays as it was.
void replace_rows(SQLite::Database& database, const std::string& table, std::vector<Row> rows) {
  SQLite::Transaction transaction(database);
  database.exec("DELETE FROM " + table);
  for (Row& row : rows) {
    row.pop_back();
    row.push_back(checksum_of(table, row));
    insert(database, table, row);
  }
  transaction.commit();
}

void change_entry(Row& entry, InputBytes& input) {
  const std::size_t column = 1 + input.place(kChangesetColumn);
  if (column < kChangesetColumn) {
    entry.at(column) = cell_in(input);
    return;
  }
  auto changeset = std::get<std::string>(entry.at(kChangesetColumn));
  entry.at(kChangesetColumn) = with_bytes_changed(std::move(changeset), input);
}

void replace_journal(SQLite::Database& database, const std::vector<Row>& entries) {
  SQLite::Transaction transaction(database);
  SQLite::Statement write(
      database,
      "UPDATE journal SET client_id = ?, at_utc = ?, who = ?, what = ?, why = ?, "
      "undoes = ?, changeset = ?, hash = ? WHERE entry = ?");
  notebook::Digest before{};
  for (const Row& entry : entries) {
    const auto& changeset = std::get<std::string>(entry.at(kChangesetColumn));
    std::string hashed(before.begin(), before.end());
    for (const Cell& cell : std::span(entry).first(kChangesetColumn)) append_checked(hashed, cell);
    append_sized(hashed, 'b', changeset);
    before = notebook::sha256_of(hashed);
    for (int i = 1; i < kChangesetColumn; ++i) {
      bind(write, i, entry.at(static_cast<std::size_t>(i)));
    }
    write.bind(kChangesetColumn, changeset.data(), static_cast<int>(changeset.size()));
    write.bind(8, before.data(), static_cast<int>(before.size()));
    bind(write, 9, entry.at(0));
    write.exec();
    write.reset();
  }
  transaction.commit();
}

}  // namespace

std::string with_bytes_changed(std::string file, InputBytes& input) {
  while (!input.is_at_end() && !file.empty()) {
    std::size_t at = input.number(3) % file.size();
    for (const char byte : input.text()) {
      file[at] = byte;
      at = (at + 1) % file.size();
    }
  }
  return file;
}

void change_rows(const std::string& path, InputBytes& input) {
  try {
    SQLite::Database database = opened(path);
    const std::vector<std::string> tables = tables_with_checksums(database);
    for (int i = 0; i < kMostChanges && !input.is_at_end(); ++i) {
      const std::string& table = tables.at(input.place(tables.size()));
      std::vector<Row> rows = rows_of(database, table);
      change(rows, input);
      replace_rows(database, table, std::move(rows));
    }
  } catch (const SQLite::Exception&) {
    return;
  }
}

void change_journal(const std::string& path, InputBytes& input) {
  try {
    SQLite::Database database = opened(path);
    std::vector<Row> entries = rows_of(database, "journal");
    change_entry(entries.at(input.place(entries.size())), input);
    replace_journal(database, entries);
  } catch (const SQLite::Exception&) {
    return;
  }
}

}  // namespace keenfall::fuzz
