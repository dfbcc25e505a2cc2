// One writer for each table that a change touches. Private to the folder.
#pragma once

#include "notebook/rows.h"

#include <map>
#include <string>

namespace keenfall::notebook {

class RowWriters {
 public:
  explicit RowWriters(SQLite::Database& database) : database_(database) {}

  RowWriter& operator[](const std::string& table) {
    return writers_.try_emplace(table, database_, table).first->second;
  }

 private:
  SQLite::Database& database_;
  std::map<std::string, RowWriter> writers_;
};

}  // namespace keenfall::notebook
