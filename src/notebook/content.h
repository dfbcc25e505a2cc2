// What a notebook holds, table by table, for others to keep; and the same put together again.
//
// Out: every table but `notebook` and `journal`, with its columns, keys and references; its rows
// without their checksums. In: such rows from elsewhere, which the schema checks one by one; then a
// notebook takes them in as it does another notebook (merge.h).
#pragma once

#include "notebook/cell.h"
#include "notebook/notebook.h"

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook {

enum class ColumnType { whole, real, text };

struct ContentColumn {
  std::string name;
  ColumnType type = ColumnType::text;
  bool may_be_null = false;
};

struct ContentReference {
  std::string column;
  std::string table;
  std::string other_column;
};

struct ContentTable {
  std::string name;
  std::int64_t since_version = 1;  // of the schema: notebooks of earlier ones have it not
  std::vector<ContentColumn> columns;
  std::vector<std::string> key;
  std::vector<ContentReference> references;
};

using ContentRow = std::vector<Cell>;

// In an order in which each refers to earlier ones only.
[[nodiscard]] std::vector<ContentTable> content_of(const Notebook& notebook);

// In the order of the table's key. Throws NotebookDamaged where one is not as it was written.
void each_content_row(const Notebook& notebook,
                      const std::string& table,
                      const std::function<void(const ContentRow&)>& use);

// Content from elsewhere, put together in a place of its own that is gone afterwards.
class GatheredContent {
 public:
  GatheredContent();
  ~GatheredContent();
  GatheredContent(const GatheredContent&) = delete;
  GatheredContent& operator=(const GatheredContent&) = delete;
  GatheredContent(GatheredContent&&) = delete;
  GatheredContent& operator=(GatheredContent&&) = delete;

  // A row of a table, tables in the order of content_of. Why it cannot be one, as a sentence;
  // nothing where it is in.
  [[nodiscard]] std::optional<std::string> add(const std::string& table, const ContentRow& row);

  // What all rows together lack to be trials; nothing where they are. No rows are added afterwards.
  [[nodiscard]] std::optional<std::string> flaw();

  [[nodiscard]] const Notebook& notebook() const;

 private:
  struct Place;

  std::unique_ptr<Place> place_;
};

}  // namespace keenfall::notebook
