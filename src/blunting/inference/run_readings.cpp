#include "blunting/inference/run_readings.h"

#include "base/require.h"
#include "materials/units.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace keenfall::blunting {

namespace {

// Readings in the unit of the fit's first series: tables that were taken into one trial one after
// the other may be written in several.
class UnitOfFit {
 public:
  UnitOfFit(const trials::Trial& trial, const SeriesKey& key) {
    const auto found = std::ranges::find_if(
        trial.series, [&key](const trials::ReadingSeries& one) { return belongs(one, key); });
    if (found != trial.series.end()) unit_ = found->unit;
  }

  [[nodiscard]] double in_unit(double reading, const trials::ReadingSeries& of) const {
    if (of.unit == unit_) return reading;
    const auto converted = materials::convert(reading, of.unit, unit_);
    base::require(converted.has_value(), "units of one kind of reading convert into one another");
    return *converted;
  }

 private:
  std::string unit_;
};

}  // namespace

bool belongs(const trials::ReadingSeries& series, const SeriesKey& key) {
  return series.kind.name == key.kind && series.thread == key.thread;
}

RunReadings readings_of(const trials::Run& run, const trials::Trial& trial, const SeriesKey& key) {
  RunReadings readings;
  const UnitOfFit unit(trial, key);
  for (const trials::Reading& reading : run.readings) {
    const trials::ReadingSeries& series = trial.series.at(reading.series);
    if (reading.struck_reason || !belongs(series, key)) continue;
    if (reading.reading > 0) {
      readings.log_bluntness[reading.cuts].push_back(
          log_bluntness_of(series.kind, unit.in_unit(reading.reading, series)));
    } else {
      ++readings.below_resolution[reading.cuts];
    }
  }
  return readings;
}

const trials::ReadingSeries& first_series(const trials::Trial& trial, const SeriesKey& key) {
  const auto found = std::ranges::find_if(
      trial.series, [&key](const trials::ReadingSeries& series) { return belongs(series, key); });
  base::require(found != trial.series.end(), "the trial must have readings of the kind asked for");
  return *found;
}

double resolution_of(const trials::ReadingSeries& series) {
  if (!series.kind.resolution) return 1;
  const auto converted = materials::convert(*series.kind.resolution, series.kind.unit, series.unit);
  return converted ? *converted : *series.kind.resolution;
}

double log_bluntness_of(const trials::ReadingKind& kind, double reading) {
  return kind.keener_when == trials::KeenerWhen::higher ? -std::log(reading) : std::log(reading);
}

}  // namespace keenfall::blunting
