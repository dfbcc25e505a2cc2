// The tables of a notebook file (docs/notebook-format.md says what they are for).
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace keenfall::notebook {

inline constexpr std::int64_t kApplicationId = 0x4B45454E;  // "KEEN"
inline constexpr std::int64_t kSchemaVersion = 1;

struct TableText {
  std::string_view name;
  std::string_view sql;  // the statement that creates it, as it stands in the file
};

// In an order in which each refers to earlier ones only.
[[nodiscard]] std::span<const TableText> tables_of_schema();

}  // namespace keenfall::notebook
