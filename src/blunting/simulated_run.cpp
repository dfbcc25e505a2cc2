#include "blunting/simulated_run.h"

#include "base/require.h"

#include <cmath>

namespace keenfall::blunting {

double unit_error(std::optional<double> tail_degrees_of_freedom, numerics::RandomStream& random) {
  if (!tail_degrees_of_freedom) return random.normal();
  const double nu = *tail_degrees_of_freedom;
  base::require(nu > 2, "a tail needs more than two degrees of freedom to have an sd");
  return random.student_t(nu) * std::sqrt((nu - 2) / nu);
}

std::vector<trials::Reading> simulated_readings(const LogLogistic& curve,
                                                const ReadingPlan& plan,
                                                const ReadingNoise& noise,
                                                numerics::RandomStream& random) {
  base::require(!plan.checkpoints.empty() && plan.repeats >= 1,
                "a plan of readings needs checkpoints and readings");
  std::vector<trials::Reading> readings;
  double first_mean = 0;
  for (const double cuts : plan.checkpoints) {
    const double spot =
        noise.checkpoint_scatter * unit_error(noise.tail_degrees_of_freedom, random);
    const double centre = log_bluntness(curve, std::log(cuts)) + spot;
    double mean = 0;
    for (int repeat = 1; repeat <= plan.repeats; ++repeat) {
      const double log_reading =
          centre + noise.reading_scatter * unit_error(noise.tail_degrees_of_freedom, random);
      mean += log_reading / plan.repeats;
      trials::Reading reading{.cuts = cuts, .reading = std::exp(log_reading)};
      if (plan.repeats > 1) reading.repeat = repeat;
      if (!plan.stations.empty()) {
        reading.station =
            plan.stations[static_cast<std::size_t>(repeat - 1) % plan.stations.size()];
      }
      readings.push_back(std::move(reading));
    }
    if (cuts == plan.checkpoints.front()) first_mean = mean;
    if (plan.stop_level && mean - first_mean >= std::log(*plan.stop_level)) break;
  }
  return readings;
}

}  // namespace keenfall::blunting
