// One simulated trial of a cell, and beside it the truth that no engine is told.
#pragma once

#include "blunting/curves/log_logistic.h"
#include "blunting/inference/blunting_data.h"
#include "trials/trial.h"
#include "trust/measuring/cell.h"

#include <cstdint>
#include <optional>
#include <string>

namespace keenfall::trust {

inline constexpr double kLevel = 4;  // times the start: the usual stop

// Of a blade; the same in every medium.
struct TrueBlade {
  double log_half_cuts = 0;
  double log_level_cuts = 0;                   // to kLevel
  std::optional<blunting::LogLogistic> curve;  // absent: made by no such curve
};

struct CellTrial {
  trials::Trial trial;
  blunting::SeriesKey key;
  std::string a;  // names of the blades
  std::string b;
  std::string medium;  // in which they are compared
  TrueBlade true_a;
  TrueBlade true_b;
  double margin = kMargin;  // to be asked about
};

// Trial `number` (from 0) of a cell at a true ratio: always the same.
[[nodiscard]] CellTrial cell_trial(const Cell& cell, TrueRatio ratio, std::uint64_t number);

}  // namespace keenfall::trust
