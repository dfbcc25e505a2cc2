// How tables would be taken in: what they were taken for, their first rows, and every problem
// beside its cell. Nothing is kept.
//
// In: tables in memory, and what the person says beside them. Out: of each table or sheet its
// shape, its headers with what each is taken for, rows as they are written; all problems, with the
// grid, row and column where each stands, and what was noticed of readings that are good; the trial
// that comes of what is good. Headers in other
// words are guessed (header_guess.h), which is said of each: the trial is what comes of the
// guesses, and taking needs them as mappings. It is read as take_good_rows reads it, so the two
// cannot differ.
#pragma once

#include "base/result.h"
#include "exchange/column_mapping.h"
#include "exchange/good_rows.h"
#include "exchange/table_in_hand.h"
#include "exchange/table_options.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::exchange {

struct SurveyedHeader {
  std::string theirs;              // as written
  std::string ours;                // empty: it is no column of ours
  std::string words;               // what it is taken for; empty: it is left
  bool is_own_name = true;         // false: another usual name, or a guess
  bool is_proposed = false;        // a guess that counts only when it is said as a mapping
  std::optional<std::size_t> row;  // of a wide table: where this label stands, an index into rows
};

struct SurveyedGrid {
  std::size_t source = 0;           // index into the tables given
  std::string sheet;                // of a spreadsheet
  std::optional<TableShape> shape;  // absent: it could not be told
  std::vector<std::vector<std::string>>
      rows;                               // with content; the first ones, and all with problems
  std::vector<std::size_t> row_numbers;   // of each: the line, or a sheet's row; from 1
  std::size_t row_count = 0;              // with content, in the whole table
  std::optional<std::size_t> header_row;  // index into rows; absent: wide, or not known
  std::vector<SurveyedHeader> headers;    // of the columns, or of a wide table's labels
};

struct PlacedProblem {
  base::Problem problem;
  std::optional<std::size_t> source;  // absent: of all of it, such as an option
  std::optional<std::size_t> grid;    // absent: of the file as a whole
  std::optional<std::size_t> row;     // index into the grid's rows; absent: of the whole table
  std::optional<std::size_t> column;  // absent: of the whole row
};

struct TableSurvey {
  std::vector<SurveyedGrid> grids;
  std::vector<std::string> sheets;      // all that the spreadsheets have, to choose from
  std::vector<PlacedProblem> problems;  // in the order of the tables and rows
  std::size_t problem_count = 0;        // those that are not listed, too
  std::vector<PlacedProblem> noticed;   // in what is good, and taken as it stands
  ColumnMap proposed;                   // the guesses
  std::optional<GoodRows> good;         // absent: nothing of it would be taken
};

inline constexpr std::size_t kMostRowsShown = 200;  // beside those with problems
inline constexpr std::size_t kMostColumnsShown = 1000;
inline constexpr std::size_t kMostCharactersShown = 1000;  // of a cell
inline constexpr std::size_t kMostProblemsShown = 500;

[[nodiscard]] TableSurvey survey_tables(std::span<const TableInHand> tables,
                                        const TableOptions& options);

// What a column may be.
struct KnownColumn {
  std::string ours;
  std::string label;  // as a sheet is headed by it
  std::string words;
  bool is_required = false;
};
[[nodiscard]] std::vector<KnownColumn> known_columns();

}  // namespace keenfall::exchange
