// The tables of a notebook file (docs/notebook-format.md says what they are for).
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace keenfall::notebook {

inline constexpr std::int64_t kApplicationId = 0x4B45454E;  // "KEEN"
inline constexpr std::int64_t kSchemaVersion = 4;

struct TableText {
  std::string_view name;
  std::string_view sql;  // the statement that creates it, as it stands in the file
};

// Of a version, 1 to kSchemaVersion; in an order in which each refers to earlier ones only. A later
// version has the tables of the one before, and more behind them.
[[nodiscard]] std::span<const TableText> tables_of_schema(std::int64_t version = kSchemaVersion);

// Its rows are written without an entry of the journal, and no undoing touches them.
[[nodiscard]] bool is_beside_the_journal(std::string_view table);

}  // namespace keenfall::notebook
