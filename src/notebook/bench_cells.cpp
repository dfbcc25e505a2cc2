#include "notebook/bench_cells.h"

#include "bench/entry_fields.h"
#include "notebook/notebook_failure.h"

#include <string>
#include <utility>

namespace keenfall::notebook {

Row cells_of(const bench::Entry& entry) {
  const bench::EntryFields fields = bench::fields_of(entry.what);
  return {entry.id,
          entry.device,
          entry.at_ms,
          fields.what,
          cell_or_null(fields.cuts),
          cell_or_null(fields.reading),
          cell_or_null(fields.angle_deg),
          fields.place_on_edge,
          fields.subject,
          fields.words,
          fields.scale_line,
          cell_or_null(fields.passes_per_side),
          cell_or_null(fields.minutes),
          std::int64_t{fields.blade_wiped ? 1 : 0},
          std::int64_t{fields.piece_changed ? 1 : 0}};
}

bench::Entry entry_in(RowReader& row) {
  bench::Entry entry{.id = row.text()};
  entry.device = row.text();
  entry.at_ms = row.whole();
  bench::EntryFields fields{.what = row.text()};
  fields.cuts = row.real_if_any();
  fields.reading = row.real_if_any();
  fields.angle_deg = row.real_if_any();
  fields.place_on_edge = row.text();
  fields.subject = row.text();
  fields.words = row.text();
  fields.scale_line = row.text();
  fields.passes_per_side = row.whole_if_any();
  fields.minutes = row.real_if_any();
  fields.blade_wiped = row.yes();
  fields.piece_changed = row.yes();
  auto what = bench::what_is_in(fields);
  if (!what) throw NotebookDamaged("an entry of the bench does not say what was done");
  entry.what = *std::move(what);
  return entry;
}

}  // namespace keenfall::notebook
