#include "blunting/inference/in_unit.h"

#include "base/require.h"
#include "materials/units.h"

#include <cmath>

namespace keenfall::blunting {

namespace {

// One of the data's unit in the other.
double one_in(const BluntingData& data, const std::string& unit) {
  const auto one = materials::convert(1, data.unit, unit);
  base::require(one.has_value(), "readings are told in a unit of their own dimension");
  return *one;
}

// Of log bluntness: of the reading, or of its reciprocal.
double log_shift(const BluntingData& data, const std::string& unit) {
  const double log_one = std::log(one_in(data, unit));
  return data.higher_is_keener() ? -log_one : log_one;
}

void shift(Draws& draws, double by) {
  for (double& draw : draws) draw += by;
}

}  // namespace

BluntingData in_unit(BluntingData data, const std::string& unit) {
  if (unit == data.unit) return data;
  const double by = log_shift(data, unit);
  for (RunData& run : data.runs) {
    for (Checkpoint& checkpoint : run.checkpoints) checkpoint.log_bluntness += by;
  }
  data.data_centres.log_start += by;
  data.recorded_per_told /= one_in(data, unit);
  data.unit = unit;
  return data;
}

BluntingFit in_unit(BluntingFit fit, const BluntingData& data, const std::string& unit) {
  if (unit == data.unit) return fit;
  const double by = log_shift(data, unit);
  for (ArmDraws& arm : fit.arms) shift(arm.log_start, by);
  for (RunDraws& run : fit.runs) {
    shift(run.log_start, by);
    run.log_start_median += by;
  }
  return fit;
}

}  // namespace keenfall::blunting
