#include "exchange/column_words.h"

#include "base/require.h"

#include <array>

namespace keenfall::exchange {

namespace {

struct ColumnWords {
  Column column;
  std::string_view words;
};

// In the order of Column.
constexpr std::array<ColumnWords, kColumnCount> kWords = {{
    {Column::blade, "the name of the blade"},
    {Column::medium, "what was cut"},
    {Column::run, "the run: from one sharpening to the stop"},
    {Column::cuts, "cuts made before the reading"},
    {Column::reading, "the sharpness reading"},
    {Column::specimen, "which piece, where there are several of one blade"},
    {Column::steel, "the blade's steel"},
    {Column::hardness, "hardness in HRC"},
    {Column::bevel_angle, "angle of the edge bevel per side, in degrees"},
    {Column::apex_angle, "angle of the micro-bevel per side, in degrees"},
    {Column::finish, "the last abrasive, with its grit system or µm"},
    {Column::thickness_behind_edge, "thickness behind the edge, in mm"},
    {Column::method, "how it was cut: push, draw, slice"},
    {Column::cut_length, "length of medium parted by one cut, in mm"},
    {Column::edge_used, "length of edge that meets the medium, in mm"},
    {Column::board, "what lies behind the medium"},
    {Column::medium_condition, "the medium's condition: dry, wet, dusty"},
    {Column::kind, "the kind of reading"},
    {Column::unit, "the unit of the reading"},
    {Column::station, "the marked place on the edge"},
    {Column::repeat, "number of the reading at its checkpoint"},
    {Column::thread, "what was parted for the reading"},
    {Column::thread_lot, "which batch of that thread"},
    {Column::medium_lot, "which batch of the medium"},
    {Column::block, "runs cut under like conditions: a day, a lot"},
    {Column::order, "place in the order of cutting"},
    {Column::operator_name, "who cut"},
    {Column::date, "when it was cut"},
    {Column::event, "something that happened at this cut"},
    {Column::struck, "why this reading does not count"},
    {Column::doubtful, "why this reading is not trusted, though it counts"},
    {Column::deviation, "what was done otherwise than planned"},
    {Column::note, "anything else"},
    {Column::voided, "why the whole run does not count"},
    {Column::sharpenings_since_new, "how often the edge was sharpened since new"},
    {Column::lasted, "cuts after which the edge still passed its test"},
    {Column::failed_by, "cuts by which the edge had failed its test"},
    {Column::test, "the pass-or-fail test"},
    {Column::test_level, "what failing it means, as a multiple of the start reading"},
    {Column::start_reading, "the reading at 0 cuts"},
    {Column::stop_reading, "the last reading"},
    {Column::stop_cuts, "cuts made until the last reading"},
}};

}  // namespace

std::string_view column_in_words(Column column) {
  const ColumnWords& found = kWords[index_of(column)];
  base::require(found.column == column, "the words of columns stand in the order of Column");
  return found.words;
}

}  // namespace keenfall::exchange
