#include "notebook/run_rows.h"

#include "notebook/part_cells.h"
#include "notebook/trial_words.h"

#include <span>
#include <vector>

namespace keenfall::notebook {

namespace {

Row row_of(const RunPlace& place, const trials::Run& run) {
  Row row{place.run_id, place.uid, place.trial_id, as_whole(place.place), run.name, place.blade_id};
  add_edge(row, run.arm.edge);
  row.emplace_back(place.medium_id);
  add_method(row, run.arm.method);
  row.insert(row.end(),
             {run.specimen,
              run.block,
              cell_or_null(run.order),
              run.medium_lot,
              run.operator_name,
              run.date,
              cell_or_null(run.sharpenings_since_new),
              cell_or_null(run.voided_reason)});
  return row;
}

Row row_of(std::int64_t run_id, std::int64_t place, const trials::Reading& reading) {
  return {run_id,
          place,
          as_whole(reading.series),
          reading.cuts,
          reading.reading,
          reading.station,
          cell_or_null(reading.repeat),
          cell_or_null(reading.struck_reason),
          cell_or_null(reading.doubtful_reason),
          as_whole(reading.line)};
}

Row row_of(std::int64_t run_id, std::int64_t place, const trials::EdgeLife& life) {
  return {run_id,
          place,
          life.test,
          life.lasted_cuts,
          cell_or_null(life.failed_by_cuts),
          cell_or_null(life.level),
          cell_or_null(life.struck_reason),
          as_whole(life.line)};
}

Row row_of(std::int64_t run_id, std::int64_t place, const trials::Event& event) {
  return {run_id, place, word_of(event.kind), event.cuts, event.as_written};
}

struct NoteRow {
  bool is_deviation = false;
  std::string words;

  bool operator==(const NoteRow&) const = default;
};

std::vector<NoteRow> notes_of(const trials::Run& run) {
  std::vector<NoteRow> notes;
  for (const std::string& words : run.deviations) notes.push_back({true, words});
  for (const std::string& words : run.notes) notes.push_back({false, words});
  return notes;
}

Row row_of(std::int64_t run_id, std::int64_t place, const NoteRow& note) {
  return {run_id, place, std::int64_t{note.is_deviation ? 1 : 0}, note.words};
}

template <class Part>
void write_parts(RowWriter& writer,
                 std::int64_t run_id,
                 const std::vector<Part>& before,
                 const std::vector<Part>& now) {
  for (std::size_t i = 0; i < now.size(); ++i) {
    if (i >= before.size()) {
      writer.insert(row_of(run_id, as_whole(i), now[i]));
    } else if (before[i] != now[i]) {
      writer.update(row_of(run_id, as_whole(i), now[i]));
    }
  }
}

}  // namespace

void write_new_run(RowWriters& writers, const RunPlace& place, const trials::Run& run) {
  writers["run"].insert(row_of(place, run));
  const std::int64_t id = place.run_id;
  write_parts(writers["reading"], id, {}, run.readings);
  write_parts(writers["edge_life"], id, {}, run.edge_lives);
  write_parts(writers["event"], id, {}, run.events);
  write_parts(writers["run_note"], id, {}, notes_of(run));
}

void write_grown_run(RowWriters& writers,
                     const RunPlace& place,
                     const trials::Run& before,
                     const trials::Run& now) {
  if (row_of(place, before) != row_of(place, now)) writers["run"].update(row_of(place, now));
  const std::int64_t id = place.run_id;
  write_grown_readings(writers, id, before.readings, now.readings);
  write_parts(writers["edge_life"], id, before.edge_lives, now.edge_lives);
  write_parts(writers["event"], id, before.events, now.events);
  write_parts(writers["run_note"], id, notes_of(before), notes_of(now));
}

void write_grown_readings(RowWriters& writers,
                          std::int64_t run_id,
                          const std::vector<trials::Reading>& before,
                          const std::vector<trials::Reading>& now) {
  write_parts(writers["reading"], run_id, before, now);
}

}  // namespace keenfall::notebook
