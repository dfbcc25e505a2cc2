#include "blunting/inference/checkpoint_readings.h"

#include "base/require.h"
#include "blunting/inference/condensed_repeats.h"
#include "blunting/inference/run_readings.h"

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {

std::vector<CheckpointReading> checkpoint_readings(const trials::Trial& trial,
                                                   const trials::Run& run,
                                                   const SeriesKey& key) {
  const trials::ReadingSeries& series = first_series(trial, key);
  base::require(series.kind.use == trials::ReadingUse::curve, "the kind must be one for curves");
  const bool higher = series.kind.keener_when == trials::KeenerWhen::higher;
  const RunReadings readings = readings_of(run, trial, key);
  std::vector<std::vector<double>> repeats;
  for (const auto& checkpoint : readings.log_bluntness) repeats.push_back(checkpoint.second);
  const CondensedRepeats condensed = condense_exactly(repeats);
  std::vector<CheckpointReading> checkpoints;
  for (const auto& checkpoint : readings.log_bluntness) {
    const double centre = condensed.checkpoints[checkpoints.size()].centre;
    checkpoints.push_back({.cuts = checkpoint.first,
                           .reading = std::exp(higher ? -centre : centre),
                           .readings = static_cast<int>(checkpoint.second.size())});
  }
  for (const auto& zeros : readings.below_resolution) {
    checkpoints.push_back({.cuts = zeros.first,
                           .reading = resolution_of(series),
                           .below_resolution = true,
                           .readings = zeros.second});
  }
  std::ranges::stable_sort(checkpoints, {}, &CheckpointReading::cuts);
  return checkpoints;
}

}  // namespace keenfall::blunting
