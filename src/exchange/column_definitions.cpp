#include "exchange/table_columns.h"

#include "base/require.h"
#include "exchange/text_lines.h"
#include "trials/angle_limit.h"

#include <algorithm>

namespace keenfall::exchange {

namespace {

// Ranges refuse what can only be a slip: an angle above 45 degrees per side (90 inclusive) is an
// inclusive angle in the wrong column, a hardness outside 20 to 70 HRC is outside the scale's use
// (ISO 6508-1 gives Rockwell C from 20 to 70), 10 mm behind the edge is a wedge (common practice,
// no source), and nobody makes a billion cuts in a run.
constexpr std::array<ColumnDefinition, kColumnCount> kDefinitions = {{
    {.column = Column::blade, .name = "blade", .must_hold = "the name of the blade, such as A"},
    {.column = Column::medium,
     .name = "medium",
     .must_hold = "what was cut, such as new sisal matting"},
    {.column = Column::run,
     .name = "run",
     .must_hold = "the name or number of the run: one from sharpening to stopping"},
    {.column = Column::cuts,
     .name = "cuts",
     .content = CellContent::number,
     .must_hold = "the cuts made before the reading",
     .accepted = "a number of zero or more, such as 0 or 15",
     .lowest = 0,
     .highest = 1e9},
    {.column = Column::reading,
     .name = "reading",
     .content = CellContent::number,
     .must_hold = "the sharpness reading, such as 104",
     .accepted = "a number above zero, such as 104"},
    {.column = Column::specimen, .name = "specimen"},
    {.column = Column::steel, .name = "steel"},
    {.column = Column::hardness,
     .name = "hardness_hrc",
     .content = CellContent::number,
     .accepted = "a Rockwell C hardness from 20 to 70, such as 58.5",
     .lowest = 20,
     .highest = 70,
     .unit = "HRC"},
    {.column = Column::bevel_angle,
     .name = "bevel_angle_per_side_deg",
     .content = CellContent::number,
     .accepted =
         "an angle per side above 0 and up to 45 degrees, such as 17 (half of 34 inclusive)",
     .lowest = 0,
     .is_lowest_allowed = false,
     .highest = trials::kWidestAnglePerSideDeg,
     .unit = "°"},
    {.column = Column::apex_angle,
     .name = "apex_angle_per_side_deg",
     .content = CellContent::number,
     .accepted =
         "an angle per side above 0 and up to 45 degrees, such as 20 (half of 40 inclusive)",
     .lowest = 0,
     .is_lowest_allowed = false,
     .highest = trials::kWidestAnglePerSideDeg,
     .unit = "°"},
    {.column = Column::finish, .name = "finish"},
    {.column = Column::thickness_behind_edge,
     .name = "thickness_behind_edge_mm",
     .content = CellContent::number,
     .accepted = "a thickness above 0 and up to 10 mm, such as 0.38",
     .lowest = 0,
     .is_lowest_allowed = false,
     .highest = 10,
     .unit = "mm"},
    {.column = Column::method, .name = "method"},
    {.column = Column::cut_length,
     .name = "cut_length_mm",
     .content = CellContent::number,
     .accepted = "a length above 0 in mm, such as 100",
     .lowest = 0,
     .is_lowest_allowed = false,
     .unit = "mm"},
    {.column = Column::edge_used,
     .name = "edge_used_mm",
     .content = CellContent::number,
     .accepted = "a length above 0 in mm, such as 40",
     .lowest = 0,
     .is_lowest_allowed = false,
     .unit = "mm"},
    {.column = Column::board, .name = "board"},
    {.column = Column::medium_condition, .name = "medium_condition"},
    {.column = Column::kind, .name = "kind"},
    {.column = Column::unit, .name = "unit"},
    {.column = Column::station, .name = "station"},
    {.column = Column::repeat,
     .name = "repeat",
     .content = CellContent::whole_number,
     .accepted = "a whole number, such as 1",
     .lowest = 0,
     .highest = 1'000'000},
    {.column = Column::thread, .name = "thread"},
    {.column = Column::thread_lot, .name = "thread_lot"},
    {.column = Column::medium_lot, .name = "medium_lot"},
    {.column = Column::block, .name = "block"},
    {.column = Column::order,
     .name = "order",
     .content = CellContent::whole_number,
     .accepted = "a whole number: the place in the order of cutting, such as 7",
     .lowest = 0,
     .highest = 1'000'000},
    {.column = Column::operator_name, .name = "operator"},
    {.column = Column::date, .name = "date"},
    {.column = Column::event, .name = "event"},
    {.column = Column::struck, .name = "struck"},
    {.column = Column::doubtful, .name = "doubtful"},
    {.column = Column::deviation, .name = "deviation"},
    {.column = Column::note, .name = "note"},
    {.column = Column::voided, .name = "voided"},
    {.column = Column::sharpenings_since_new,
     .name = "sharpenings_since_new",
     .content = CellContent::whole_number,
     .accepted = "a whole number of zero or more, such as 3",
     .lowest = 0,
     .highest = 1'000'000},
    {.column = Column::lasted, .name = "lasted"},
    {.column = Column::failed_by, .name = "failed_by"},
    {.column = Column::test, .name = "test"},
    {.column = Column::test_level,
     .name = "test_level",
     .content = CellContent::number,
     .accepted = "how many times its start the reading is where the test fails, above 1, such as 2",
     .lowest = 1,
     .is_lowest_allowed = false,
     .unit = "x"},
    {.column = Column::start_reading,
     .name = "start_reading",
     .content = CellContent::number,
     .accepted = "a number above zero, such as 104"},
    {.column = Column::stop_reading,
     .name = "stop_reading",
     .content = CellContent::number,
     .accepted = "a number above zero, such as 400"},
    {.column = Column::stop_cuts,
     .name = "stop_cuts",
     .content = CellContent::number,
     .accepted = "a number of zero or more, such as 127",
     .lowest = 0},
}};

std::string list_of_our_columns() {
  std::string list;
  for (const ColumnDefinition& definition : column_definitions()) {
    list += (list.empty() ? "" : ", ") + std::string(definition.name);
  }
  return list;
}

}  // namespace

std::span<const ColumnDefinition> column_definitions() { return kDefinitions; }

const ColumnDefinition& definition_of(Column column) {
  const ColumnDefinition& definition = kDefinitions[index_of(column)];
  base::require(definition.column == column, "column definitions stand in the order of Column");
  return definition;
}

const ColumnDefinition* find_definition(std::string_view name) {
  const std::string wanted = folded(name);
  const auto definitions = column_definitions();
  const auto found = std::ranges::find_if(
      definitions,
      [&wanted](const ColumnDefinition& candidate) { return folded(candidate.name) == wanted; });
  return found == definitions.end() ? nullptr : &*found;
}

base::Problem unknown_own_column(std::string_view ours) {
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = in_quotes(ours) + " is no column known here.",
          .place = {.column = "--column", .found = excerpt(ours)},
          .accepted = "one of " + list_of_our_columns()};
}

}  // namespace keenfall::exchange
