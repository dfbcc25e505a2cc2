// One row of a long table, made from the cells of another shape.
//
// Each cell remembers where it stands in the person's own table, so that what is wrong with it is
// named there. A reading cell may become several rows (repeats), or one that only tells an event.
#pragma once

#include "exchange/grid.h"
#include "exchange/problem_list.h"
#include "exchange/table_columns.h"
#include "exchange/table_options.h"
#include "trials/counted.h"

#include <array>
#include <cstddef>
#include <functional>
#include <string>

namespace keenfall::exchange {

struct ExpandedCell {
  std::string text;
  std::size_t line = 0;
  std::size_t column = 0;  // 1-based; 0: known by its header
  std::string fault;
  std::string header;  // as the person's table has it; empty: our own name
};

struct ExpandedRow {
  std::size_t line = 0;
  std::size_t column = 0;
  std::array<ExpandedCell, kColumnCount> cells;

  [[nodiscard]] ExpandedCell& operator[](Column column_) { return cells[index_of(column_)]; }
  [[nodiscard]] const ExpandedCell& operator[](Column column_) const {
    return cells[index_of(column_)];
  }
};

using RowTaker = std::function<void(const ExpandedRow&, const MatchedColumns&)>;

// What the cells of one table have in common.
struct GridReading {
  const TableOptions& options;
  DecimalMark mark = DecimalMark::point;
  ProblemList& problems;
  const TableParts& left_out;
  const RowTaker& take;
  const RowTaker& note_left_out;      // what holds for a reading or run that is not taken
  MatchedColumns columns{};           // each of ours at its own index; set before any row is taken
  std::size_t noted_readings = 0;     // readings that count although something stands beside them
  std::size_t struck_readings = 0;    // readings whose cells strike them
  std::size_t doubtful_readings = 0;  // readings whose cells doubt them
  std::size_t events = 0;             // cells that hold words and no reading
  std::size_t repeats = 0;            // cells that hold several
  std::string first_noted;            // as written
  std::string first_event;
  std::string first_repeats;
};

// Whether the cell is to be taken. If so, problems are blamed on it from now on where they concern
// only its reading, else on `whole`: the row or column that makes the run.
[[nodiscard]] bool stands_in(TablePart whole, TablePart cell, GridReading& reading);

// Hands on the readings and words of one cell. `base`: what holds for all of them, with the cuts;
// `unit`: where the cell names none.
void take_reading_cell(const GridCell& cell,
                       const ExpandedCell& place,
                       const std::string& unit,
                       const ExpandedRow& base,
                       GridReading& reading);

// What the cuts of a row count: by the words over or beside their own cell, else by the table's.
[[nodiscard]] trials::Counted counted_at(const ExpandedCell& cuts, const MatchedColumns& columns);

// Our columns, each at its own index and under its own name.
[[nodiscard]] MatchedColumns all_columns();

// How cells with notes and repeats were read, as remarks.
[[nodiscard]] std::vector<std::string> remarks_on_cells(const GridReading& reading);

}  // namespace keenfall::exchange
