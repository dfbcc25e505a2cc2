// A value of a row, as SQLite's strict tables hold it: nothing, a whole number, a real or a text.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>

namespace keenfall::notebook {

using Cell = std::variant<std::monostate, std::int64_t, double, std::string>;

[[nodiscard]] inline std::int64_t as_whole(std::size_t number) {
  return static_cast<std::int64_t>(number);
}

template <class T>
[[nodiscard]] Cell cell_or_null(const std::optional<T>& value) {
  return value ? Cell(*value) : Cell();
}
[[nodiscard]] inline Cell cell_or_null(const std::optional<int>& value) {
  return value ? Cell(std::int64_t{*value}) : Cell();
}

}  // namespace keenfall::notebook
