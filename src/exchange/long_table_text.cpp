#include "exchange/long_table_text.h"

#include "base/plain_number.h"
#include "exchange/cell_words.h"
#include "exchange/table_columns.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace keenfall::exchange {

namespace {

using CellTexts = std::array<std::string, kColumnCount>;

std::string text_of_number(const std::optional<double>& number) {
  return number ? base::plain_number(*number) : "";
}

std::string text_of_count(const std::optional<int>& count) {
  return count ? std::to_string(*count) : "";
}

std::string hardness_text(const trials::Trial& trial, const trials::Run& run) {
  const trials::Blade* const blade = trials::find_blade(trial, run.arm.blade);
  if (blade == nullptr) return "";
  std::optional<trials::Hardness> hardness = blade->hardness;
  if (!run.specimen.empty()) {
    const auto piece = std::ranges::find(blade->specimens, run.specimen, &trials::Specimen::name);
    hardness = piece == blade->specimens.end() ? std::nullopt : piece->hardness;
  }
  if (!hardness || hardness->scale != trials::HardnessScale::rockwell_c) return "";
  return base::plain_number(hardness->reading);
}

// The cells that hold for the whole run.
CellTexts run_cells(const trials::Trial& trial, const trials::Run& run) {
  CellTexts cells;
  const auto set = [&cells](Column column, std::string text) {
    cells[index_of(column)] = std::move(text);
  };
  const auto degrees = [](const std::optional<trials::PerSideAngle>& angle) {
    return angle ? base::plain_number(angle->deg) : "";
  };
  const trials::Arm& arm = run.arm;
  const trials::Blade* const blade = trials::find_blade(trial, arm.blade);
  set(Column::blade, arm.blade);
  set(Column::medium, arm.medium.name);
  set(Column::run, run.name);
  set(Column::specimen, run.specimen);
  set(Column::steel, blade == nullptr ? "" : blade->steel);
  set(Column::hardness, hardness_text(trial, run));
  set(Column::bevel_angle, degrees(arm.edge.bevel_angle));
  set(Column::apex_angle, degrees(arm.edge.apex_angle));
  set(Column::finish, arm.edge.finish);
  set(Column::thickness_behind_edge, text_of_number(arm.edge.thickness_behind_edge_mm));
  const bool is_known = arm.method.motion != trials::Motion::not_recorded;
  set(Column::method, is_known ? std::string(word_for(arm.method.motion)) : arm.method.as_written);
  set(Column::cut_length, text_of_number(arm.method.cut_length_mm));
  set(Column::edge_used, text_of_number(arm.method.edge_used_mm));
  set(Column::board, arm.method.board);
  set(Column::medium_condition, arm.medium.condition);
  set(Column::medium_lot, run.medium_lot);
  set(Column::block, run.block);
  set(Column::order, text_of_count(run.order));
  set(Column::operator_name, run.operator_name);
  set(Column::date, run.date);
  set(Column::voided, run.voided_reason.value_or(""));
  set(Column::sharpenings_since_new, text_of_count(run.sharpenings_since_new));
  return cells;
}

void add_reading(CellTexts& cells, const trials::Trial& trial, const trials::Reading& reading) {
  const trials::ReadingSeries& series = trial.series.at(reading.series);
  cells[index_of(Column::cuts)] = base::plain_number(reading.cuts);
  cells[index_of(Column::reading)] = base::plain_number(reading.reading);
  cells[index_of(Column::kind)] = series.kind.name;
  cells[index_of(Column::unit)] = series.unit;
  cells[index_of(Column::thread)] = series.thread;
  cells[index_of(Column::thread_lot)] = series.thread_lot;
  cells[index_of(Column::station)] = reading.station;
  cells[index_of(Column::repeat)] = text_of_count(reading.repeat);
  cells[index_of(Column::struck)] = reading.struck_reason.value_or("");
  cells[index_of(Column::doubtful)] = reading.doubtful_reason.value_or("");
}

void add_event(CellTexts& cells, const trials::Event& event) {
  cells[index_of(Column::cuts)] = base::plain_number(event.cuts);
  cells[index_of(Column::event)] =
      event.as_written.empty() ? std::string(word_for(event.kind)) : event.as_written;
}

void add_edge_life(CellTexts& cells, const trials::EdgeLife& life) {
  cells[index_of(Column::lasted)] =
      base::plain_number(life.lasted_cuts) + (life.failed_by_cuts ? "" : "+");
  cells[index_of(Column::failed_by)] = text_of_number(life.failed_by_cuts);
  cells[index_of(Column::test)] = life.test;
  cells[index_of(Column::test_level)] = text_of_number(life.level);
  cells[index_of(Column::struck)] = life.struck_reason.value_or("");
}

void append_run(std::vector<CellTexts>& rows, const trials::Trial& trial, const trials::Run& run) {
  const CellTexts of_run = run_cells(trial, run);
  const std::size_t first = rows.size();
  for (const trials::Reading& reading : run.readings) {
    rows.push_back(of_run);
    add_reading(rows.back(), trial, reading);
  }
  for (const trials::EdgeLife& life : run.edge_lives) {
    rows.push_back(of_run);
    add_edge_life(rows.back(), life);
  }
  for (const trials::Event& event : run.events) {
    rows.push_back(of_run);
    add_event(rows.back(), event);
  }
  const std::size_t texts =
      std::max({run.notes.size(), run.deviations.size(), std::size_t{run.voided_reason ? 1U : 0U}});
  while (rows.size() < first + texts) rows.push_back(of_run);
  for (std::size_t i = 0; i < run.notes.size(); ++i) {
    rows[first + i][index_of(Column::note)] = run.notes[i];
  }
  for (std::size_t i = 0; i < run.deviations.size(); ++i) {
    rows[first + i][index_of(Column::deviation)] = run.deviations[i];
  }
}

std::string in_csv(const std::string& cell, bool is_first) {
  const bool needs_quotes = cell.find_first_of(",\"\r\n") != cell.npos ||
                            (is_first && (cell.starts_with('#') || cell.starts_with("sep=")));
  if (!needs_quotes) return cell;
  std::string quoted_cell = "\"";
  for (const char c : cell) {
    if (c == '"') quoted_cell += '"';
    quoted_cell += c;
  }
  return quoted_cell + '"';
}

// "reading"; of a column that counts something else than cuts "cuts (strokes)".
std::string header_of(std::size_t column, const trials::Counted& counted) {
  std::string header(column_definitions()[column].name);
  const bool counts = column == index_of(Column::cuts) || column == index_of(Column::lasted) ||
                      column == index_of(Column::failed_by);
  if (counts && counted != trials::Counted{}) header += " (" + counted.many + ")";
  return header;
}

// "131", "131 struck: slipped", "131?".
std::string cell_of(const trials::Reading& reading) {
  std::string text = base::plain_number(reading.reading);
  if (reading.struck_reason) {
    text += reading.struck_reason->empty() ? " struck" : " struck: " + *reading.struck_reason;
  } else if (reading.doubtful_reason) {
    text += *reading.doubtful_reason == kQuestionMarkReason
                ? "?"
                : " doubtful: " + *reading.doubtful_reason;
  }
  return text;
}

}  // namespace

TypedRows long_cells_of(const trials::Trial& trial) {
  std::vector<CellTexts> rows;
  for (const trials::Run& run : trial.runs) append_run(rows, trial, run);
  std::vector<std::size_t> used;
  for (std::size_t i = 0; i < kColumnCount; ++i) {
    const bool has_content =
        std::ranges::any_of(rows, [i](const CellTexts& cells) { return !cells[i].empty(); });
    if (i < kRequiredColumnCount || has_content) used.push_back(i);
  }
  TypedRows written(1);
  for (const std::size_t i : used) written.front().push_back(header_of(i, trial.counted));
  for (CellTexts& cells : rows) {
    written.emplace_back();
    for (const std::size_t i : used) written.back().push_back(std::move(cells[i]));
  }
  return written;
}

std::string long_table_of(const trials::Trial& trial) {
  std::string text;
  for (const std::vector<std::string>& row : long_cells_of(trial)) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      text += (i == 0 ? "" : ",") + in_csv(row[i], i == 0);
    }
    text += '\n';
  }
  return text;
}

TypedRows wide_cells_of(const trials::Trial& trial) {
  std::vector<CellTexts> heads;
  std::map<double, std::vector<std::string>> checkpoints;  // by cuts, a cell a run
  for (std::size_t r = 0; r < trial.runs.size(); ++r) {
    const trials::Run& run = trial.runs[r];
    heads.push_back(run_cells(trial, run));
    if (!run.notes.empty()) heads.back()[index_of(Column::note)] = run.notes.front();
    if (!run.deviations.empty()) heads.back()[index_of(Column::deviation)] = run.deviations.front();
    for (const trials::Reading& reading : run.readings) {
      CellTexts of_reading;
      add_reading(of_reading, trial, reading);
      for (const Column column : {Column::kind, Column::unit, Column::thread, Column::thread_lot}) {
        heads.back()[index_of(column)] = of_reading[index_of(column)];
      }
      std::vector<std::string>& row = checkpoints[reading.cuts];
      row.resize(trial.runs.size());
      row[r] += (row[r].empty() ? "" : " / ") + cell_of(reading);
    }
  }
  TypedRows written;
  for (std::size_t i = 0; i < kColumnCount; ++i) {
    const bool has_content =
        std::ranges::any_of(heads, [i](const CellTexts& cells) { return !cells[i].empty(); });
    if (!has_content) continue;
    written.push_back({std::string(column_definitions()[i].name)});
    for (CellTexts& cells : heads) written.back().push_back(std::move(cells[i]));
  }
  written.push_back({header_of(index_of(Column::cuts), trial.counted)});
  written.back().resize(trial.runs.size() + 1);
  for (auto& [cuts, row] : checkpoints) {
    written.push_back({base::plain_number(cuts)});
    std::ranges::move(row, std::back_inserter(written.back()));
  }
  return written;
}

bool is_reason_in_tables(const std::string& text) { return reason_in(text) == text; }

}  // namespace keenfall::exchange
