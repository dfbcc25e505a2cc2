#include "exchange/runs_table.h"

#include "base/plain_number.h"
#include "exchange/cell_words.h"
#include "exchange/grid_record.h"
#include "exchange/header_meaning.h"
#include "exchange/row_choice.h"
#include "exchange/table_row.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <array>
#include <set>

namespace keenfall::exchange {

namespace {

// What is handed on with the readings or in a row of its own, and not with both.
constexpr std::array kNotWithReadings = {Column::cuts,
                                         Column::reading,
                                         Column::lasted,
                                         Column::failed_by,
                                         Column::test,
                                         Column::test_level,
                                         Column::start_reading,
                                         Column::stop_reading,
                                         Column::stop_cuts,
                                         Column::event,
                                         Column::struck,
                                         Column::doubtful,
                                         Column::deviation,
                                         Column::note,
                                         Column::voided};

struct CutColumn {
  std::size_t position = 0;
  std::string cuts;
  std::string unit;
};

class RunsReading {
 public:
  RunsReading(MatchedColumns columns, bool is_sheet, GridReading& reading)
      : columns_(std::move(columns)), is_sheet_(is_sheet), reading_(reading) {
    for (std::size_t i = 0; i < columns_.headers.size(); ++i) {
      const std::string& header = columns_.headers[i];
      const bool is_ours = std::ranges::any_of(columns_.positions,
                                               [i](const auto& position) { return position == i; });
      const auto cuts = cuts_in_header(header);
      if (is_ours || !cuts) continue;
      const HeaderUnit unit =
          unit_in_header(header, Column::reading, reading.options.defined_kinds);
      cut_columns_.push_back({.position = i, .cuts = cuts_text(*cuts), .unit = unit.name});
    }
    std::erase_if(columns_.not_used,
                  [](const std::string& header) { return cuts_in_header(header).has_value(); });
    reading_.columns = all_columns();
    for (std::size_t i = 0; i < kColumnCount; ++i) {
      if (const auto position = columns_.positions[i]) {
        reading_.columns.headers[i] = columns_.headers[*position];
      }
      reading_.columns.units[i] = columns_.units[i];
    }
    if (!columns_.has(Column::cuts)) reading_.columns.headers[index_of(Column::cuts)].clear();
    reading_.columns.units[index_of(Column::reading)] = {};
    if (!columns_.has(Column::failed_by)) {
      reading_.columns.positions[index_of(Column::failed_by)].reset();
    }
  }

  void take_row(const GridRow& row) {
    ExpandedRow base;
    base.line = row.line;
    for (const ColumnDefinition& definition : column_definitions()) {
      const bool is_kept =
          std::ranges::find(kNotWithReadings, definition.column) == kNotWithReadings.end();
      if (is_kept && columns_.has(definition.column)) {
        base[definition.column] = cell_of(row, definition.column);
      }
    }
    take_start(row, base);
    for (const CutColumn& column : cut_columns_) {
      if (!enters(row, column.position)) continue;
      ExpandedRow at_cuts = base;
      at_cuts[Column::cuts] = place_of(row, column.position);
      at_cuts[Column::cuts].text = column.cuts;
      take_reading_cell(
          row.at(column.position), place_of(row, column.position), column.unit, at_cuts, reading_);
    }
    take_stop(row, base);
    reading_.problems.stand_in(whole(row));
    take_rest(row, base, has_readings(row));
    names_.insert(name_of(base));
    if (reading_.left_out.has_any_of(whole(row).file)) note_left_out(row);
  }

  // What the row says of its run.
  void note_left_out(const GridRow& row) {
    ExpandedRow all;
    all.line = row.line;
    for (const ColumnDefinition& definition : column_definitions()) {
      if (definition.column == Column::reading || !columns_.has(definition.column)) continue;
      all[definition.column] = cell_of(row, definition.column);
    }
    reading_.note_left_out(all, reading_.columns);
  }

  [[nodiscard]] TablePart whole(const GridRow& row) const {
    return {reading_.problems.current_file(), row.line, 0};
  }

  [[nodiscard]] std::vector<std::string> remarks() const {
    std::vector<std::string> remarks = {
        "Read as a table with one line a run: " + std::to_string(names_.size()) +
        (names_.size() == 1 ? " run." : " runs.")};
    if (!columns_.not_used.empty()) {
      std::string list;
      for (const std::string& header : columns_.not_used) {
        list += (list.empty() ? "" : ", ") + excerpt(header);
      }
      remarks.push_back("Not used, because not understood: the columns " + list + ".");
    }
    if (open_lives_ > 0) {
      remarks.push_back("Where " + excerpt(columns_.header_of(Column::failed_by)) +
                        " is empty, the edge is taken as never seen to fail: " +
                        std::to_string(open_lives_) + (open_lives_ == 1 ? " run." : " runs."));
    }
    for (const std::string& remark : remarks_on_cells(reading_)) remarks.push_back(remark);
    return remarks;
  }

 private:
  // Written as the table's decimal mark asks, since it goes through a cell again.
  [[nodiscard]] std::string cuts_text(double cuts) const {
    std::string text = base::plain_number(cuts);
    if (reading_.mark == DecimalMark::comma) std::ranges::replace(text, '.', ',');
    return text;
  }

  [[nodiscard]] bool enters(const GridRow& row, std::size_t position) {
    return stands_in(
        whole(row), {reading_.problems.current_file(), row.line, position + 1}, reading_);
  }

  [[nodiscard]] ExpandedCell place_of(const GridRow& row, std::size_t position) const {
    const GridCell& cell = row.at(position);
    return {.text = cell.text,
            .line = row.line,
            .column = is_sheet_ ? position + 1 : 0,
            .fault = cell.fault,
            .header = columns_.headers[position]};
  }

  [[nodiscard]] ExpandedCell cell_of(const GridRow& row, Column column) const {
    const auto position = columns_.positions[index_of(column)];
    return position ? place_of(row, *position) : ExpandedCell{};
  }

  [[nodiscard]] bool is_filled(const GridRow& row, Column column) const {
    const auto position = columns_.positions[index_of(column)];
    return position && !row.at(*position).is_blank();
  }

  [[nodiscard]] bool has_readings(const GridRow& row) const {
    return is_filled(row, Column::start_reading) || is_filled(row, Column::stop_reading) ||
           std::ranges::any_of(cut_columns_, [&row](const CutColumn& column) {
             return !row.at(column.position).is_blank();
           });
  }

  [[nodiscard]] static std::string name_of(const ExpandedRow& base) {
    std::string name;
    for (const ColumnDefinition& definition : column_definitions()) {
      const Column column = definition.column;
      if (column == Column::station || column == Column::repeat || column == Column::kind ||
          column == Column::unit || column == Column::thread || column == Column::thread_lot) {
        continue;
      }
      name += base[column].text + '\x1F';
    }
    return name;
  }

  void take_start(const GridRow& row, const ExpandedRow& base) {
    const auto position = columns_.positions[index_of(Column::start_reading)];
    if (!position || !enters(row, *position)) return;
    ExpandedRow at_start = base;
    at_start[Column::cuts] = place_of(row, *position);
    at_start[Column::cuts].text = "0";
    at_start[Column::cuts].fault.clear();
    take_reading_cell(row.at(*position),
                      place_of(row, *position),
                      columns_.units[index_of(Column::start_reading)].name,
                      at_start,
                      reading_);
  }

  void take_stop(const GridRow& row, const ExpandedRow& base) {
    if (!is_filled(row, Column::stop_reading)) return;
    const std::size_t position = *columns_.positions[index_of(Column::stop_reading)];
    if (!enters(row, position)) return;
    ExpandedRow at_stop = base;
    at_stop[Column::cuts] = cell_of(row, Column::stop_cuts);
    if (!is_filled(row, Column::stop_cuts)) {
      const ExpandedCell place = place_of(row, position);
      reading_.problems.add({reading_.problems.current_file(), row.line, place.column},
                            {.kind = base::ProblemKind::missing,
                             .sentence = "There is a stop reading, but stop_cuts does not say "
                                         "after how many cuts it was read.",
                             .place = {.column = place.header, .found = excerpt(place.text)},
                             .accepted = std::string(definition_of(Column::stop_cuts).accepted)},
                            Concerns::reading);
      return;
    }
    take_reading_cell(row.at(position),
                      place_of(row, position),
                      columns_.units[index_of(Column::stop_reading)].name,
                      at_stop,
                      reading_);
  }

  // How long the edge lasted, and what is said of the whole run.
  void take_rest(const GridRow& row, const ExpandedRow& base, bool has_readings) {
    ExpandedRow rest = base;
    bool tells = false;
    for (const Column column : {Column::lasted,
                                Column::failed_by,
                                Column::test,
                                Column::test_level,
                                Column::deviation,
                                Column::note,
                                Column::voided}) {
      rest[column] = cell_of(row, column);
      const bool is_of_test = column == Column::test || column == Column::test_level;
      tells = tells || (!is_of_test && is_filled(row, column));
    }
    if (is_filled(row, Column::event)) {
      tells = true;
      if (rest[Column::note].text.empty()) rest[Column::note] = cell_of(row, Column::event);
    }
    if (is_filled(row, Column::struck)) take_struck(row, rest, has_readings);
    if (is_filled(row, Column::doubtful)) refuse_doubtful(row);
    if (is_filled(row, Column::lasted) && columns_.has(Column::failed_by) &&
        !is_filled(row, Column::failed_by) &&
        row.at(*columns_.positions[index_of(Column::lasted)])
                .text.find_first_not_of("0123456789.,") == std::string::npos) {
      ++open_lives_;
    }
    if (tells) return reading_.take(rest, reading_.columns);
    if (has_readings) return;
    reading_.problems.add({reading_.problems.current_file(), row.line},
                          {.kind = base::ProblemKind::missing,
                           .sentence = "The row has no reading and does not say how long the edge "
                                       "lasted. Leave it out, or say why in a column voided or "
                                       "note."});
  }

  void take_struck(const GridRow& row, ExpandedRow& rest, bool has_readings) {
    const ExpandedCell struck = cell_of(row, Column::struck);
    if (!has_readings) {
      rest[Column::struck] = struck;
      return;
    }
    reading_.problems.add(
        {reading_.problems.current_file(), row.line, struck.column},
        {.kind = base::ProblemKind::conflicting,
         .sentence = "Which reading of this run is struck cannot be told. Write it behind the "
                     "reading, as in 240 (struck), or use a column voided for the whole run.",
         .place = {.column = struck.header, .found = excerpt(struck.text)}});
  }

  void refuse_doubtful(const GridRow& row) {
    const ExpandedCell doubtful = cell_of(row, Column::doubtful);
    if (!reason_in(doubtful.text)) return;
    reading_.problems.add(
        {reading_.problems.current_file(), row.line, doubtful.column},
        {.kind = base::ProblemKind::conflicting,
         .sentence = "Which reading of this run is doubtful cannot be told. Put a question mark "
                     "behind it, as in 240?, or write what is doubted in a column note.",
         .place = {.column = doubtful.header, .found = excerpt(doubtful.text)}});
  }

  MatchedColumns columns_;
  bool is_sheet_;
  GridReading& reading_;
  std::vector<CutColumn> cut_columns_;
  std::set<std::string> names_;
  std::size_t open_lives_ = 0;
};

}  // namespace

std::vector<std::string> take_runs_table(const Grid& grid,
                                         std::size_t header_row,
                                         char delimiter,
                                         GridReading& reading) {
  if (grid.rows.empty()) return {};
  RecordOfGrid record(grid, reading.mark);
  const Record header = record.of(grid.rows[header_row]);
  constexpr std::size_t kNamesOnly = 3;
  auto columns = match_columns(
      header, reading.options.columns, reading.problems, reading.options.defined_kinds, kNamesOnly);
  if (!columns) return {};
  const RowFormat format{.columns = *columns, .delimiter = delimiter, .mark = reading.mark};
  RowChoice choice(reading.options.where, *columns, reading.problems);
  RunsReading runs(std::move(*columns), grid.is_sheet, reading);
  for (std::size_t i = header_row + 1; i < grid.rows.size(); ++i) {
    const Record cells = record.of(grid.rows[i]);
    if (reading.left_out.has(runs.whole(grid.rows[i]))) {
      if (choice.is_taken(cells)) runs.note_left_out(grid.rows[i]);
      continue;
    }
    reading.problems.stand_in(runs.whole(grid.rows[i]));
    if (!has_fitting_length(cells, format, reading.problems) || !choice.is_taken(cells)) continue;
    runs.take_row(grid.rows[i]);
  }
  reading.problems.stand_nowhere();
  if (grid.rows.size() <= header_row + 1) {
    reading.problems.add({reading.problems.current_file(), 0},
                         {.kind = base::ProblemKind::unsuitable_data,
                          .sentence = "The table has a header but no rows.",
                          .accepted = "a row for each run"});
  }
  std::vector<std::string> remarks = runs.remarks();
  for (std::size_t i = 0; i < header_row; ++i) {
    const auto content = std::ranges::find_if_not(grid.rows[i].cells, &GridCell::is_blank);
    if (content == grid.rows[i].cells.end()) continue;
    remarks.push_back("Above the header stands " + in_quotes(content->text) + ".");
  }
  if (const auto remark = choice.remark()) remarks.push_back(*remark);
  return remarks;
}

}  // namespace keenfall::exchange
