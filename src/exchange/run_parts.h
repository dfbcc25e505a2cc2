// Which rows of the tables a run was made of, and which of them say what of its blade.
//
// Kept only where bad rows are to be left out (ProblemList::keep_blames).
#pragma once

#include "exchange/problem_list.h"
#include "exchange/table_row.h"

#include <string>
#include <vector>

namespace keenfall::exchange {

// One steel or hardness, and the rows that say it.
struct SaidBy {
  std::string words;
  Origin first;
  std::vector<TablePart> by;
};

struct RunParts {
  std::vector<TablePart> all;
  std::vector<SaidBy> steels;
  std::vector<SaidBy> hardnesses;

  void add(const TableRow& row, TablePart part);
  void add_all_of(RunParts&& others);
};

}  // namespace keenfall::exchange
