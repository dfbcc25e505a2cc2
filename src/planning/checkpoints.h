// At which cuts an edge is read.
//
// Cuts that grow by a factor: an edge loses most at first and ever more slowly after, so that
// readings at even steps would nearly all lie where little happens, and one factor serves edges
// that last half or twice as long alike. The two fixed lists are common practice without a source;
// the others are worked out so that at least two points lie either side of half keenness.
// Cuts are whole numbers, unless what is counted is a length or a time.
// Method page: docs/methods/planning.md
#pragma once

#include "base/result.h"
#include "blunting/curves/log_logistic.h"

#include <span>
#include <string_view>
#include <vector>

namespace keenfall::planning {

// 0 1 3 7 15 31 63 127 255 ..., to the first at or beyond `last_cuts` (common practice, no source).
[[nodiscard]] std::vector<double> doubling_checkpoints(double last_cuts = 255);

// 0 1 2 4 6 9 13 19 28: denser, for stock that carries grit (common practice, no source).
[[nodiscard]] std::vector<double> gritty_checkpoints();

// How well an edge is read at one checkpoint.
struct CheckpointReading {
  int repeats = 7;
  double reading_log_sd = 0.09;  // of one reading
  double spot_log_sd = 0.025;    // of the spot read: repeats do not lessen it
};

// The standard error of log half keenness of one run that was read at these cuts and nowhere else
// (Fisher's information). The shape is known as well as arms of one medium have the same, by the
// model's prior: runs tell it together.
[[nodiscard]] double half_keenness_error(std::span<const double> checkpoint_cuts,
                                         const CheckpointReading& reading,
                                         const blunting::LogLogistic& curve);

struct CheckpointNeeds {
  double half_keenness_cuts = 40;  // expected; above 0
  double either_way = 2;           // arms may last so many times as long, or as short; 1 or more
  double shape = 0.75;
  double stop_level = 2;  // times the start: the last checkpoint is where a middling edge is as
                          // blunt as that, or later
  double run_log_sd = 0.20;
  CheckpointReading reading;
  bool whole_cuts = true;
};

// The fewest checkpoints from which the half keenness of a run comes out well enough: reading makes
// runs scatter at most 15 % more, wherever within `either_way` it lies; where no steps do, steps of
// one half. Refuses numbers out of their ranges.
[[nodiscard]] base::Result<std::vector<double>> fewest_checkpoints(const CheckpointNeeds& needs);

// Why they grow by a factor, in a sentence.
[[nodiscard]] std::string_view why_growing_steps();

}  // namespace keenfall::planning
