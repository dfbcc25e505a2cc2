// What a run read at each checkpoint, for pictures and tables: one value for its repeats.
//
// The geometric mean of the readings that are not struck out, doubtful ones counted, also of a run
// that was voided. The fit pulls a slip among the repeats in (condensed_repeats.h); this does not.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "trials/trial.h"

#include <vector>

namespace keenfall::blunting {

struct CheckpointReading {
  double cuts = 0;
  double reading = 0;             // in the unit of the series; the resolution where below it
  bool below_resolution = false;  // read as zero: less than the instrument can show
  int readings = 0;               // how many this is of

  bool operator==(const CheckpointReading&) const = default;
};

// By rising cuts. The key must be of a kind for curves that the trial has.
[[nodiscard]] std::vector<CheckpointReading> checkpoint_readings(const trials::Trial& trial,
                                                                 const trials::Run& run,
                                                                 const SeriesKey& key);

}  // namespace keenfall::blunting
