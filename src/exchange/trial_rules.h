// The rules of taking a table in, for a trial that comes by another way: as the rows of a data
// package.
//
// In: a trial. Out: everything that no table could have brought in, each in a sentence that says of
// which run it is, with the notebook's table and column it stands in. Ranges are those of the
// table's columns (docs/table.md).
#pragma once

#include "base/result.h"
#include "trials/trial.h"

#include <string>
#include <vector>

namespace keenfall::exchange {

struct BrokenRule {
  std::string table;  // of the notebook: "reading"
  base::Problem problem;
};

// At most 100, the first ones.
[[nodiscard]] std::vector<BrokenRule> broken_rules(const trials::Trial& trial);

}  // namespace keenfall::exchange
