// The columns of the long table: their names, what each must hold, and how a file's headers match
// them.
//
// Headers are compared ignoring case, spaces, '-' and '_' (header_meaning.h). A mapping
// (ours=theirs, --column) beats a header of the same name; a column named in a mapping serves only
// what it is mapped to. Units and ranges stand in the definitions; docs/table.md tells the same to
// people.
#pragma once

#include "exchange/column_mapping.h"
#include "exchange/delimited_text.h"
#include "exchange/problem_list.h"
#include "trials/reading_kind.h"

#include <array>
#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::exchange {

enum class Column : std::size_t {
  blade,
  medium,
  run,
  cuts,
  reading,
  specimen,
  steel,
  hardness,
  bevel_angle,
  apex_angle,
  finish,
  thickness_behind_edge,
  method,
  cut_length,
  edge_used,
  board,
  medium_condition,
  kind,
  unit,
  station,
  repeat,
  thread,
  thread_lot,
  medium_lot,
  block,
  order,
  operator_name,
  date,
  event,
  struck,
  doubtful,
  deviation,
  note,
  voided,
  sharpenings_since_new,
  lasted,
  failed_by,
  test,
  test_level,
  start_reading,  // of a table with one line a run, as are the next two
  stop_reading,
  stop_cuts
};
inline constexpr std::size_t kColumnCount = 42;
inline constexpr std::size_t kRequiredColumnCount = 5;  // the first five

enum class CellContent { text, number, whole_number };

struct ColumnDefinition {
  Column column = Column::blade;
  std::string_view name;
  CellContent content = CellContent::text;
  std::string_view must_hold;  // "the medium that was cut, such as new sisal"
  std::string_view accepted;   // for numbers: what would be accepted
  double lowest = -std::numeric_limits<double>::infinity();
  bool is_lowest_allowed = true;
  double highest = std::numeric_limits<double>::infinity();
  std::string_view unit;  // may follow the number in the cell: "58 HRC"
};

// In the order of Column, which is the order in which tables are written.
[[nodiscard]] std::span<const ColumnDefinition> column_definitions();
[[nodiscard]] const ColumnDefinition& definition_of(Column column);
// By name, ignoring case, spaces, '-' and '_'; nullptr when we have no such column.
[[nodiscard]] const ColumnDefinition* find_definition(std::string_view name);
[[nodiscard]] base::Problem unknown_own_column(std::string_view ours);
[[nodiscard]] constexpr std::size_t index_of(Column column) {
  return static_cast<std::size_t>(column);
}

// What a header says of the numbers below it.
struct HeaderUnit {
  double factor = 1;  // a number times this is in the column's own unit
  std::string name;   // of a reading: its unit, where the cell names none

  bool operator==(const HeaderUnit&) const = default;
};

// Where our columns stand in a file.
struct MatchedColumns {
  std::array<std::optional<std::size_t>, kColumnCount> positions;
  std::array<HeaderUnit, kColumnCount> units;
  std::vector<std::string> headers;   // as written
  std::vector<std::string> not_used;  // headers that were not understood

  [[nodiscard]] bool has(Column column) const { return positions[index_of(column)].has_value(); }
  // The header as written, or our name where the file has no such column.
  [[nodiscard]] std::string header_of(Column column) const;
};

// Reports missing required columns, mappings to nothing and headers that stand twice to `problems`;
// nullopt when there were any. `needed`: how many of the first columns the shape cannot do without.
[[nodiscard]] std::optional<MatchedColumns> match_columns(
    const Record& header,
    const ColumnMap& mappings,
    ProblemList& problems,
    std::span<const trials::ReadingKind> defined_kinds = {},
    std::size_t needed = kRequiredColumnCount);

}  // namespace keenfall::exchange
