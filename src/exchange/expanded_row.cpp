#include "exchange/expanded_row.h"

#include "exchange/reading_cell.h"
#include "exchange/text_lines.h"

namespace keenfall::exchange {

namespace {

void refuse_merged(const ExpandedCell& place, GridReading& reading) {
  reading.problems.add({reading.problems.current_file(), place.line, place.column},
                       {.kind = base::ProblemKind::conflicting,
                        .sentence = "The reading " + in_quotes(place.text) +
                                    " is merged over several cells, so which checkpoint or run it "
                                    "belongs to cannot be told. Unmerge them.",
                        .place = {.column = place.header, .found = excerpt(place.text)}},
                       Concerns::table);
}

// "at 15 cuts".
std::string at_so_many(const ExpandedCell& cuts, const GridReading& reading) {
  return "at " + so_many(cuts.text, counted_at(cuts, reading.columns));
}

void take_readings(const ReadingCell& read,
                   const GridCell& cell,
                   const std::string& unit,
                   ExpandedRow row,
                   GridReading& reading) {
  const std::string at_cuts = at_so_many(row[Column::cuts], reading);
  const std::string struck_already = row[Column::struck].text;
  const ExpandedCell doubtful_already = row[Column::doubtful];
  const ExpandedCell place = row[Column::reading];
  const auto at_place = [&place](std::string text) {
    return ExpandedCell{.text = std::move(text),
                        .line = place.line,
                        .column = place.column,
                        .fault = {},
                        .header = place.header};
  };
  bool is_commented = false;
  for (const WrittenReading& one : read.readings) {
    const bool names_unit = one.number.find(' ') != one.number.npos;
    row[Column::reading].text = one.number + (names_unit || unit.empty() ? "" : " " + unit);
    if (one.repeat > 0) row[Column::repeat] = at_place(std::to_string(one.repeat));
    if (!one.struck.empty()) {
      ++reading.struck_readings;
      row[Column::struck] = at_place(one.struck);
    } else if (struck_already.empty()) {
      row[Column::struck] = {};
    }
    row[Column::doubtful] = doubtful_already;
    if (!one.doubtful.empty()) {
      ++reading.doubtful_readings;
      row[Column::doubtful] = at_place(one.doubtful);
    }
    std::string note = one.note;
    if (!cell.comment.empty() && !is_commented) {
      note += (note.empty() ? "" : "; ") + cell.comment;
      is_commented = true;
    }
    row[Column::note] = {};
    if (!note.empty()) row[Column::note] = at_place(one.number + " " + at_cuts + ": " + note);
    if (!one.note.empty()) {
      if (reading.noted_readings++ == 0) reading.first_noted = cell.text;
    }
    reading.take(row, reading.columns);
  }
  if (read.readings.size() > 1 && reading.repeats++ == 0) reading.first_repeats = cell.text;
}

}  // namespace

bool stands_in(TablePart whole, TablePart cell, GridReading& reading) {
  if (reading.left_out.has(whole) || reading.left_out.covers(cell)) return false;
  reading.problems.stand_in(whole, cell);
  return true;
}

void take_reading_cell(const GridCell& cell,
                       const ExpandedCell& place,
                       const std::string& unit,
                       const ExpandedRow& base,
                       GridReading& reading) {
  if (cell.is_blank() && cell.comment.empty()) return;
  ExpandedRow row = base;
  row.line = place.line;
  row.column = place.column;
  row[Column::reading] = place;
  if (!cell.fault.empty()) {
    row[Column::reading].text.clear();
    row[Column::reading].fault = cell.fault;
    return reading.take(row, reading.columns);
  }
  const auto read = reading_cell(cell.text, reading.mark, reading.options.defined_kinds);
  if (!read) {
    base::Problem problem = read.error();
    problem.place.column = place.header;
    return reading.problems.add({reading.problems.current_file(), place.line, place.column},
                                std::move(problem),
                                Concerns::reading);
  }
  if (cell.is_covered) {
    if (!read->readings.empty()) refuse_merged(place, reading);
    return;
  }
  if (!read->readings.empty()) return take_readings(*read, cell, unit, std::move(row), reading);
  if (read->event.empty() && cell.comment.empty()) return;
  row[Column::reading] = {};
  row[Column::struck] = {};
  row[Column::doubtful] = {};
  if (!read->event.empty()) {
    if (reading.events++ == 0) reading.first_event = excerpt(cell.text);
    row[Column::event] = place;
    row[Column::event].text = read->event;
  }
  if (!cell.comment.empty()) {
    row[Column::note] = place;
    row[Column::note].text = at_so_many(row[Column::cuts], reading) + ": " + cell.comment;
  }
  reading.take(row, reading.columns);
}

trials::Counted counted_at(const ExpandedCell& cuts, const MatchedColumns& columns) {
  const std::string& header =
      cuts.header.empty() ? columns.headers[index_of(Column::cuts)] : cuts.header;
  return trials::counted_in_words(header).value_or(trials::Counted{});
}

MatchedColumns all_columns() {
  MatchedColumns columns;
  for (const ColumnDefinition& definition : column_definitions()) {
    columns.positions[index_of(definition.column)] = index_of(definition.column);
    columns.headers.push_back(std::string(definition.name));
  }
  return columns;
}

std::vector<std::string> remarks_on_cells(const GridReading& reading) {
  std::vector<std::string> remarks;
  const auto readings = [](std::size_t count) {
    return std::to_string(count) + (count == 1 ? " reading" : " readings");
  };
  if (reading.repeats > 0) {
    remarks.push_back("Cells with several numbers, as in " + in_quotes(reading.first_repeats) +
                      ", are read as repeats at one checkpoint.");
  }
  if (reading.noted_readings > 0) {
    remarks.push_back("Words beside " + readings(reading.noted_readings) + ", as in " +
                      in_quotes(reading.first_noted) +
                      ", are kept as notes; those readings count.");
  }
  if (reading.events > 0) {
    remarks.push_back("Words without a reading in " + std::to_string(reading.events) +
                      (reading.events == 1 ? " cell" : " cells") + ", as in " +
                      in_quotes(reading.first_event) + ", are kept as what happened there.");
  }
  if (reading.struck_readings > 0) {
    remarks.push_back("Struck out, because the cell says so: " + readings(reading.struck_readings) +
                      ".");
  }
  if (reading.doubtful_readings > 0) {
    remarks.push_back("Doubtful, because the cell says so, and counted: " +
                      readings(reading.doubtful_readings) + ".");
  }
  return remarks;
}

}  // namespace keenfall::exchange
