#include "blunting/inference/off_the_curve.h"

#include "blunting/simulated_run.h"
#include "numerics/random.h"

#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::blunting {

namespace {

// A logistic rise in log cuts, steeper than any of the family, about a third of half keenness.
double log_s(const OffTheCurve& how, const LogLogistic& curve, double cuts) {
  constexpr double kSteepness = 2.5;
  const double power = std::pow(3 * cuts / std::exp(curve.log_half_keenness), kSteepness);
  return std::log(1 + (how.times - 1) * power / (1 + power));
}

double log_departure(const OffTheCurve& how, const LogLogistic& curve, double cuts) {
  const double whole = std::log(how.times);
  switch (how.leaves) {
    case Leaves::not_at_all:
      return 0;
    case Leaves::from_seven_cuts_on:
      return cuts >= 7 ? whole : 0;
    case Leaves::at_fifteen_cuts:
      return cuts == 15 ? whole : 0;
    case Leaves::in_an_s:
      return log_s(how, curve, cuts) - (log_bluntness(curve, std::log(cuts)) - curve.log_start);
    case Leaves::keener_at_first:
      break;
  }
  if (cuts == 0 || cuts > 7) return 0;
  return cuts < 7 ? whole : 0.5 * whole;
}

std::vector<trials::Reading> readings_off(const OffTheCurve& how,
                                          const LogLogistic& curve,
                                          const ReadingNoise& noise,
                                          numerics::RandomStream& random) {
  constexpr double kStopLevel = 4;
  std::vector<trials::Reading> readings;
  double first_mean = 0;
  for (const double cuts : {0.0, 1.0, 3.0, 7.0, 15.0, 31.0, 63.0, 127.0}) {
    const double departure = log_departure(how, curve, cuts);
    double mean = 0;
    for (trials::Reading& reading :
         simulated_readings(curve, {.checkpoints = {cuts}, .repeats = 5}, noise, random)) {
      reading.reading *= std::exp(departure);
      mean += std::log(reading.reading) / 5;
      readings.push_back(std::move(reading));
    }
    if (cuts == 0) first_mean = mean;
    if (mean - first_mean >= std::log(kStopLevel)) break;
  }
  return readings;
}

}  // namespace

trials::Trial off_the_curve(const OffTheCurve& how, std::uint64_t seed) {
  numerics::RandomStream random({seed}, 0);
  trials::Trial trial{
      .blades = {{.name = "A"}, {.name = "B"}},
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  for (const bool is_a : {true, false}) {
    const double noisier = is_a ? how.noise_of_a : 1;
    ReadingNoise noise{.reading_scatter = 0.09 * noisier, .checkpoint_scatter = 0.04 * noisier};
    if (how.heavy_tails) noise.tail_degrees_of_freedom = 4;
    for (int i = 0; i < how.runs_each; ++i) {
      const LogLogistic curve{std::log(104) + 0.06 * random.normal(),
                              std::log(is_a ? 56 : 40) + 0.25 * random.normal(),
                              is_a ? 0.7 : 0.75};
      trial.runs.push_back({.name = std::to_string(i),
                            .arm = {.blade = is_a ? "A" : "B", .medium = {.name = "sisal"}},
                            .readings = readings_off(how, curve, noise, random)});
    }
  }
  return trial;
}

}  // namespace keenfall::blunting
