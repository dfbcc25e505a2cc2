// A run that is taken in again: as it was, with more to it, or otherwise. Private to the folder.
#pragma once

#include "trials/trial.h"

#include <cstddef>
#include <optional>
#include <string>

namespace keenfall::notebook {

struct PartsKept {
  std::size_t readings = 0;
  std::size_t edge_lives = 0;
  std::size_t events = 0;
  std::size_t deviations = 0;
  std::size_t notes = 0;
};

struct Growth {
  std::optional<std::string> contradiction;  // "has 104 gf at 5 cuts": what the kept run has
  PartsKept kept;                            // as many of each the kept run has
  bool is_more = false;
};

// Where each stands in its table does not count, nor does what was struck in the notebook since.
[[nodiscard]] Growth growth_of(const trials::Run& kept, const trials::Run& taken);

}  // namespace keenfall::notebook
