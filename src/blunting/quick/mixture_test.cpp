#include "blunting/quick/mixture.h"

#include "blunting/simulated_pair.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace keenfall::blunting {
namespace {

// One blade, whose shape's mean may lie anywhere: nothing is seen of how shapes differ, so what is
// known of that is the prior, log-normal about 0.12 with a log sd of 0.7. Of the precision, the
// element between the mean and the shape is -1 over the square of the scatter (model_spec.h).
TEST(Mixture, KeepsWhatThePriorSaysOfAScatterThatTheReadingsDoNotShow) {
  trials::Trial trial = simulated({.runs_each = 4}, 3);
  trial.runs.resize(4);
  ModelSpec spec = default_model();
  spec.order_drift = false;
  spec.priors.log_shape_sd = 20;
  spec.priors.shape_scatter = 0.12;
  spec.priors.log_scatter_sd = 0.7;
  const BluntingData data = *prepare(trial, {.kind = "thread_push", .thread = ""}, spec.errors);
  ScatterGroup group(data, spec, parts_for(spec, data), {0});

  const std::vector<MixturePart> parts = mixture_of(group, spec.priors);

  double mean = 0;
  double square = 0;
  for (const MixturePart& part : parts) {
    const Eigen::MatrixXd precision = part.given.factor * part.given.factor.transpose();
    const double log_scatter = -0.5 * std::log(-precision(3, 0));
    mean += part.weight * log_scatter;
    square += part.weight * log_scatter * log_scatter;
  }
  EXPECT_NEAR(mean, std::log(0.12), 0.05);
  EXPECT_NEAR(std::sqrt(square - mean * mean), 0.7, 0.05);
}

}  // namespace
}  // namespace keenfall::blunting
