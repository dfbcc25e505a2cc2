// How long an edge lasted, as people write it: "40", "40+", "> 40", "at least 40", "<5", "40-50".
//
// In: the cells lasted and failed_by of one row and the table's decimal mark. Out: the cuts after
// which the edge still passed and by which it had failed (absent: never seen to fail). A plain
// number under lasted says only that it passed then. Fails with a Problem that names which of the
// two cells is at fault; a lone plain number needs failed_by to be asked about elsewhere.
#pragma once

#include "base/result.h"
#include "exchange/decimal_mark.h"

#include <optional>
#include <string>
#include <string_view>

namespace keenfall::exchange {

struct EdgeLifeCells {
  double lasted_cuts = 0;
  std::optional<double> failed_by_cuts;
  bool is_open = false;  // a cell says in words that the edge was not seen to fail
};

// "40 cuts" of a cell that says "40", "40 strokes" of one that says so.
[[nodiscard]] std::string life_as_said(std::string_view cell);

// At least one of the two is not empty. Place::column of a Problem is "lasted" or "failed_by".
[[nodiscard]] base::Result<EdgeLifeCells> edge_life_in(std::string_view lasted,
                                                       std::string_view failed_by,
                                                       DecimalMark mark);

}  // namespace keenfall::exchange
