// A piece of work that is done in batches, each of which can be done by itself and kept.
#pragma once

#include "trust/measuring/sums.h"

#include <functional>
#include <string>
#include <vector>

namespace keenfall::trust {

struct Experiment {
  std::string name;  // as its file is called: "runs-4.margin"
  std::string kind;  // by which it is chosen as well: "cells"
  std::string cell;  // likewise: "runs-4"
  std::string about;
  std::string definition;  // every number that makes it; kept results of another do not count
  int batches = 0;
  std::function<Sums(int batch)> measured;  // the same for the same batch, in any order
};

// All there are, each of at most so many trials.
[[nodiscard]] std::vector<Experiment> all_experiments(int most_trials);

}  // namespace keenfall::trust
