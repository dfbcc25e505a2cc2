#include "notebook/rows.h"

#include "base/require.h"
#include "notebook/notebook_failure.h"

#include <algorithm>

namespace keenfall::notebook {

namespace {

std::string insert_statement(const TableLayout& layout) {
  std::string names;
  std::string marks;
  for (const std::string& column : layout.columns) {
    names += column + ", ";
    marks += "?, ";
  }
  return "INSERT INTO " + layout.name + " (" + names + "checksum) VALUES (" + marks + "?)";
}

std::string update_statement(const TableLayout& layout) {
  std::string text = "UPDATE " + layout.name + " SET ";
  for (std::size_t i = 0; i < layout.columns.size(); ++i) {
    text += layout.columns[i] + " = ?" + std::to_string(i + 1) + ", ";
  }
  text += "checksum = ?" + std::to_string(layout.columns.size() + 1) + " WHERE ";
  for (std::size_t k = 0; k < layout.key.size(); ++k) {
    if (k > 0) text += " AND ";
    text += layout.columns[layout.key[k]] + " = ?" + std::to_string(layout.key[k] + 1);
  }
  return text;
}

void bind_cell(SQLite::Statement& statement, int place, const Cell& cell) {
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

// SQLite keeps no negative zero.
Row without_negative_zeros(Row row) {
  for (Cell& cell : row) {
    if (auto* real = std::get_if<double>(&cell)) *real += 0.0;
  }
  return row;
}

Cell cell_of(const SQLite::Column& column) {
  if (column.isNull()) return {};
  if (column.isInteger()) return column.getInt64();
  if (column.isFloat()) return column.getDouble();
  return std::string(column.getText(), static_cast<std::size_t>(column.getBytes()));
}

}  // namespace

TableLayout layout_of(SQLite::Database& database, const std::string& table) {
  TableLayout layout{.name = table};
  SQLite::Statement columns(database, "PRAGMA table_info(" + table + ")");
  while (columns.executeStep()) {
    const std::string name = columns.getColumn("name").getString();
    if (name == "checksum") continue;
    if (columns.getColumn("pk").getInt() > 0) layout.key.push_back(layout.columns.size());
    layout.columns.push_back(name);
  }
  base::require(!layout.columns.empty(), "the schema has the table");
  return layout;
}

RowWriter::RowWriter(SQLite::Database& database, const std::string& table)
    : database_(database),
      layout_(layout_of(database, table)),
      insert_(database, insert_statement(layout_)) {}

void RowWriter::bind(SQLite::Statement& statement, const Row& row) {
  base::require(row.size() == layout_.columns.size(), "a row has a cell for every column");
  const Row kept = without_negative_zeros(row);
  for (std::size_t i = 0; i < kept.size(); ++i) {
    bind_cell(statement, static_cast<int>(i) + 1, kept[i]);
  }
  statement.bind(static_cast<int>(row.size()) + 1, checksum_.of(layout_.name, kept));
}

void RowWriter::insert(const Row& row) {
  bind(insert_, row);
  insert_.exec();
  insert_.reset();
}

bool RowWriter::update(const Row& row) {
  SQLite::Statement statement(database_, update_statement(layout_));
  bind(statement, row);
  return statement.exec() == 1;
}

bool RowWriter::remove(const Row& row) {
  std::string text = "DELETE FROM " + layout_.name + " WHERE ";
  for (std::size_t k = 0; k < layout_.key.size(); ++k) {
    text += (k > 0 ? " AND " : "") + layout_.columns[layout_.key[k]] + " = ?";
  }
  SQLite::Statement statement(database_, text);
  for (std::size_t k = 0; k < layout_.key.size(); ++k) {
    bind_cell(statement, static_cast<int>(k) + 1, row.at(layout_.key[k]));
  }
  return statement.exec() == 1;
}

bool RowWriter::have_one_key(const Row& one, const Row& other) const {
  return std::ranges::all_of(
      layout_.key, [&](std::size_t column) { return one.at(column) == other.at(column); });
}

std::int64_t RowWriter::next_key() {
  if (next_key_ == 0) {
    const std::string& key = layout_.columns.at(layout_.key.at(0));
    next_key_ = database_.execAndGet("SELECT coalesce(max(" + key + "), 0) FROM " + layout_.name)
                    .getInt64();
  }
  return ++next_key_;
}

RowRead row_read(SQLite::Statement& statement, const std::string& table, RowChecksum& checksum) {
  RowRead read;
  const int last = statement.getColumnCount() - 1;
  for (int i = 0; i < last; ++i) read.row.push_back(cell_of(statement.getColumn(i)));
  const SQLite::Column kept = statement.getColumn(last);
  read.is_whole = kept.isInteger() && kept.getInt64() == checksum.of(table, read.row);
  return read;
}

std::vector<std::string> texts_in(SQLite::Database& database, const std::string& query) {
  std::vector<std::string> texts;
  SQLite::Statement rows(database, query);
  while (rows.executeStep()) texts.push_back(rows.getColumn(0).getString());
  return texts;
}

void each_row(SQLite::Database& database,
              const std::string& table,
              const std::string& order,
              std::span<const Cell> values,
              const std::function<void(const Row&)>& use) {
  SQLite::Statement rows(database, "SELECT * FROM " + table + " " + order);
  for (std::size_t i = 0; i < values.size(); ++i) {
    bind_cell(rows, static_cast<int>(i) + 1, values[i]);
  }
  RowChecksum checksum;
  while (rows.executeStep()) {
    const RowRead read = row_read(rows, table, checksum);
    if (!read.is_whole) {
      throw NotebookDamaged("a row of the table " + table +
                            " is not as it was written: its checksum does not fit");
    }
    use(read.row);
  }
}

}  // namespace keenfall::notebook
