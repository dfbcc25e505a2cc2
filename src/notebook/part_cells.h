// Parts that several tables hold in the same columns, as cells and back: a hardness, an edge, a way
// of cutting, a kind of reading. Private to the folder.
#pragma once

#include "notebook/row_reader.h"
#include "trials/trial.h"

#include <optional>

namespace keenfall::notebook {

// Each appends its cells, or reads them from where the reader stands.
void add_hardness(Row& row, const std::optional<trials::Hardness>& hardness);
void add_edge(Row& row, const trials::EdgePreparation& edge);
void add_method(Row& row, const trials::CutMethod& method);
void add_kind(Row& row, const trials::ReadingKind& kind);

[[nodiscard]] std::optional<trials::Hardness> read_hardness(RowReader& row);
[[nodiscard]] trials::EdgePreparation read_edge(RowReader& row);
[[nodiscard]] trials::CutMethod read_method(RowReader& row);
[[nodiscard]] trials::ReadingKind read_kind(RowReader& row);

}  // namespace keenfall::notebook
