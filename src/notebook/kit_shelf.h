// The kit's things into their rows and out of them, whatever they are. Private to the folder.
#pragma once

#include "notebook/kit.h"
#include "notebook/kit_rows.h"
#include "notebook/row_writers.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook {

struct KitTable {
  const char* table;
  const char* words;           // "kind of reading"
  std::int64_t since_version;  // of the schema
};

// As the alternatives of KitThing.
inline constexpr std::array kKitTables{KitTable{"blade", "blade", 1},
                                       KitTable{"edge", "edge", 3},
                                       KitTable{"medium", "medium", 1},
                                       KitTable{"medium_lot", "lot", 3},
                                       KitTable{"thread", "thread", 3},
                                       KitTable{"reading_kind", "kind of reading", 3},
                                       KitTable{"stone", "stone", 3}};

struct ShelvedThing {
  std::int64_t id = 0;
  std::string uid;
  KitThing thing;
};

// "blade A", "lot roll 7 of new matting".
[[nodiscard]] std::string words_of(const KitThing& thing);

class KitShelf {
 public:
  // Keeps a reference to the database.
  explicit KitShelf(SQLite::Database& database);

  // Of the kind with that place in kKitTables, in the order in which they came in.
  void each(std::size_t kind, const std::function<void(const ShelvedThing&)>& use);
  [[nodiscard]] std::optional<ShelvedThing> with_uid(std::size_t kind, const std::string& uid);
  // Called like that one.
  [[nodiscard]] std::optional<ShelvedThing> called_like(const KitThing& thing);

  void add(const KitThing& thing, const std::string& uid);
  // Of a blade without the specimens that go; those are taken away first.
  void change(const ShelvedThing& to);
  void remove(const ShelvedThing& there);
  void remove_specimen(std::int64_t blade_id, const std::string& name);

 private:
  Row row_of(std::int64_t id, const std::string& uid, const KitThing& thing);
  ShelvedThing thing_in(std::size_t kind, const Row& row);
  trials::Medium medium_with(std::int64_t medium_id);
  std::vector<trials::Specimen> specimens_of(std::int64_t blade_id);
  void put_specimens(std::int64_t blade_id, const KitThing& thing);

  SQLite::Database& database_;
  RowWriters writers_;
  NewUid new_uid_;
  KitRows rows_;
};

}  // namespace keenfall::notebook
