#include "notebook/part_cells.h"

#include "notebook/notebook_failure.h"
#include "notebook/trial_words.h"

namespace keenfall::notebook {

namespace {

Cell angle_cell(const std::optional<trials::PerSideAngle>& angle) {
  return angle ? Cell(angle->deg) : Cell();
}

std::optional<trials::PerSideAngle> read_angle(RowReader& row) {
  const auto deg = row.real_if_any();
  if (!deg) return std::nullopt;
  return trials::PerSideAngle{*deg};
}

}  // namespace

void add_hardness(Row& row, const std::optional<trials::Hardness>& hardness) {
  if (!hardness) {
    row.insert(row.end(), 4, Cell());
    return;
  }
  row.push_back(hardness->reading);
  row.push_back(word_of(hardness->scale));
  row.push_back(cell_or_null(hardness->error));
  row.push_back(word_of(hardness->how_known));
}

void add_edge(Row& row, const trials::EdgePreparation& edge) {
  row.push_back(angle_cell(edge.bevel_angle));
  row.push_back(angle_cell(edge.apex_angle));
  row.push_back(edge.finish);
  row.push_back(cell_or_null(edge.thickness_behind_edge_mm));
}

void add_method(Row& row, const trials::CutMethod& method) {
  row.push_back(word_of(method.motion));
  row.push_back(method.as_written);
  row.push_back(cell_or_null(method.cut_length_mm));
  row.push_back(cell_or_null(method.edge_used_mm));
  row.push_back(method.board);
}

void add_kind(Row& row, const trials::ReadingKind& kind) {
  row.push_back(kind.name);
  row.push_back(kind.words);
  row.push_back(kind.unit);
  row.push_back(word_of(kind.keener_when));
  row.push_back(word_of(kind.use));
  row.push_back(kind.default_level);
  row.push_back(word_of(kind.zero));
  row.push_back(cell_or_null(kind.resolution));
  row.push_back(cell_or_null(kind.largest));
}

std::optional<trials::Hardness> read_hardness(RowReader& row) {
  const auto reading = row.real_if_any();
  const auto scale = row.text_if_any();
  const auto error = row.real_if_any();
  const auto how_known = row.text_if_any();
  if (!reading && !scale && !error && !how_known) return std::nullopt;
  if (!reading || !scale || !how_known) {
    throw NotebookDamaged("a hardness lacks its number, its scale or how it is known");
  }
  return trials::Hardness{.reading = *reading,
                          .scale = hardness_scale_of(*scale),
                          .error = error,
                          .how_known = how_known_of(*how_known)};
}

trials::EdgePreparation read_edge(RowReader& row) {
  trials::EdgePreparation edge;
  edge.bevel_angle = read_angle(row);
  edge.apex_angle = read_angle(row);
  edge.finish = row.text();
  edge.thickness_behind_edge_mm = row.real_if_any();
  return edge;
}

trials::CutMethod read_method(RowReader& row) {
  trials::CutMethod method;
  method.motion = motion_of(row.text());
  method.as_written = row.text();
  method.cut_length_mm = row.real_if_any();
  method.edge_used_mm = row.real_if_any();
  method.board = row.text();
  return method;
}

trials::ReadingKind read_kind(RowReader& row) {
  trials::ReadingKind kind;
  kind.name = row.text();
  kind.words = row.text();
  kind.unit = row.text();
  kind.keener_when = keener_when_of(row.text());
  kind.use = use_of(row.text());
  kind.default_level = row.real();
  kind.zero = zero_of(row.text());
  kind.resolution = row.real_if_any();
  kind.largest = row.real_if_any();
  return kind;
}

}  // namespace keenfall::notebook
