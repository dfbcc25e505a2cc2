// The readings of one run that may share a fit, gathered by checkpoint: struck ones left out, all
// in the unit of the first series of the fit.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "trials/trial.h"

#include <map>
#include <vector>

namespace keenfall::blunting {

// By cuts; readings of zero, which show no more than that they are below the resolution, apart.
struct RunReadings {
  std::map<double, std::vector<double>> log_bluntness;
  std::map<double, int> below_resolution;
};

[[nodiscard]] RunReadings readings_of(const trials::Run& run,
                                      const trials::Trial& trial,
                                      const SeriesKey& key);

[[nodiscard]] bool belongs(const trials::ReadingSeries& series, const SeriesKey& key);

// The trial must have one.
[[nodiscard]] const trials::ReadingSeries& first_series(const trials::Trial& trial,
                                                        const SeriesKey& key);

// The kind's resolution in the unit of the series, or 1; as it stands where the units do not
// convert.
[[nodiscard]] double resolution_of(const trials::ReadingSeries& series);

// Of a reading above zero.
[[nodiscard]] double log_bluntness_of(const trials::ReadingKind& kind, double reading);

}  // namespace keenfall::blunting
