#include "notebook/content.h"

#include "base/require.h"
#include "notebook/kept_trials.h"
#include "notebook/kit.h"
#include "notebook/looks.h"
#include "notebook/notebook_failure.h"
#include "notebook/notebook_file.h"
#include "notebook/plans.h"
#include "notebook/row_writers.h"
#include "notebook/schema.h"

#include <algorithm>
#include <map>
#include <string_view>
#include <utility>

namespace keenfall::notebook {

namespace {

ColumnType type_named(std::string_view name) {
  if (name == "INTEGER") return ColumnType::whole;
  if (name == "REAL") return ColumnType::real;
  base::require(name == "TEXT", "content is whole numbers, reals and texts");
  return ColumnType::text;
}

ContentTable described(SQLite::Database& database, const std::string& name) {
  ContentTable table{.name = name};
  SQLite::Statement columns(database, "PRAGMA table_info(" + name + ")");
  while (columns.executeStep()) {
    const std::string column = columns.getColumn("name").getString();
    if (column == "checksum") continue;
    const bool is_key = columns.getColumn("pk").getInt() > 0;
    if (is_key) table.key.push_back(column);
    table.columns.push_back({.name = column,
                             .type = type_named(columns.getColumn("type").getString()),
                             .may_be_null = !is_key && columns.getColumn("notnull").getInt() == 0});
  }
  SQLite::Statement references(database, "PRAGMA foreign_key_list(" + name + ")");
  while (references.executeStep()) {
    table.references.push_back({.column = references.getColumn("from").getString(),
                                .table = references.getColumn("table").getString(),
                                .other_column = references.getColumn("to").getString()});
  }
  return table;
}

std::string key_order(const ContentTable& table) {
  std::string order = "ORDER BY ";
  for (std::size_t i = 0; i < table.key.size(); ++i) order += (i > 0 ? ", " : "") + table.key[i];
  return order;
}

std::int64_t version_that_brought(std::string_view table) {
  std::int64_t version = 1;
  while (std::ranges::count(tables_of_schema(version), table, &TableText::name) == 0) ++version;
  return version;
}

// What is still being typed is no content.
bool is_content(std::string_view table) {
  return table != "notebook" && table != "journal" && table != "typed_sheet";
}

// What SQLite says of a row that the schema refuses, for whoever made the row.
std::string refusal(const std::string& said) {
  const auto behind = [&](std::string_view start) -> std::optional<std::string> {
    if (!said.starts_with(start)) return std::nullopt;
    return said.substr(start.size());
  };
  if (const auto columns = behind("UNIQUE constraint failed: ")) {
    return "There is a row with the same " + *columns + " already.";
  }
  if (const auto column = behind("NOT NULL constraint failed: ")) {
    return "Nothing stands in " + *column + ", which must not be empty.";
  }
  if (said.starts_with("FOREIGN KEY")) return "The row refers to one that is not there.";
  if (const auto rule = behind("CHECK constraint failed: ")) {
    return "The row breaks the rule that " + *rule + ".";
  }
  return "The row cannot be kept: " + said + ".";
}

}  // namespace

std::vector<ContentTable> content_of(const Notebook& notebook) {
  NotebookFile& file = notebook.file();
  return carrying_over([&] {
    std::vector<ContentTable> tables;
    for (const TableText& table : tables_of_schema(file.version)) {
      if (is_content(table.name)) {
        tables.push_back(described(file.database, std::string(table.name)));
        tables.back().since_version = version_that_brought(table.name);
      }
    }
    return tables;
  });
}

void each_content_row(const Notebook& notebook,
                      const std::string& table,
                      const std::function<void(const ContentRow&)>& use) {
  SQLite::Database& database = notebook.file().database;
  carrying_over([&] { each_row(database, table, key_order(described(database, table)), {}, use); });
}

struct GatheredContent::Place {
  Notebook notebook = Notebook::temporary();
  SQLite::Database& database = notebook.file().database;
  std::optional<SQLite::Transaction> transaction{database};
  RowWriters writers{database};
  std::map<std::string, std::vector<std::size_t>> uids;  // of a table, the columns that hold one

  const std::vector<std::size_t>& uids_of(const std::string& table) {
    const auto [found, is_new] = uids.try_emplace(table);
    if (!is_new) return found->second;
    const std::vector<std::string> columns = layout_of(database, table).columns;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (columns[i] == "uid" || columns[i] == "trial_uid") found->second.push_back(i);
    }
    return found->second;
  }
};

GatheredContent::GatheredContent() : place_(std::make_unique<Place>()) {}
GatheredContent::~GatheredContent() = default;

std::optional<std::string> GatheredContent::add(const std::string& table, const ContentRow& row) {
  for (const std::size_t column : place_->uids_of(table)) {
    if (row.at(column) == Cell(std::string())) {
      return "Nothing stands in " + table + ".uid, by which it would be known again.";
    }
  }
  RowWriter& writer = place_->writers[table];
  try {
    writer.insert(row);
    return std::nullopt;
  } catch (const SQLite::Exception& failure) {
    if (failure.getErrorCode() != kConstraintBroken) throw_as_failure(failure);
    writer.recover();
    return refusal(failure.what());
  }
}

std::optional<std::string> GatheredContent::flaw() {
  return carrying_over([&]() -> std::optional<std::string> {
    if (place_->transaction) place_->transaction->commit();
    place_->transaction.reset();
    try {
      (void)kept_kit(place_->notebook);
      for (const std::string& trial : trial_names(place_->notebook)) {
        (void)kept_trial(place_->notebook, trial);
        (void)looks_at(place_->notebook, trial);
        (void)kept_plan(place_->notebook, trial);
      }
    } catch (const NotebookDamaged& damage) {
      return damage.what();
    }
    return std::nullopt;
  });
}

const Notebook& GatheredContent::notebook() const { return place_->notebook; }

}  // namespace keenfall::notebook
