// What a chain learns while warming up: its step size (dual averaging) and the variances of its
// coordinates (in growing windows). Internal to nuts.cpp.
//
// Dual averaging: Hoffman & Gelman 2014, section 3.2, their constants. Windows: a short start with
// a guessed metric, windows that double, and a short end for the step size alone; variances are
// shrunk towards the guess, or 0.001, as if by five further draws, so that a short window cannot
// yield a zero.
#pragma once

#include <cstddef>
#include <span>
#include <utility>
#include <vector>

namespace keenfall::numerics {

class StepSizeTuner {
 public:
  explicit StepSizeTuner(double target_acceptance) : target_(target_acceptance) {}

  void restart(double step_size);
  void learn(double acceptance);
  [[nodiscard]] double current() const;
  [[nodiscard]] double averaged() const;

 private:
  double target_;
  double centre_ = 0;
  double log_step_ = 0;
  double log_step_average_ = 0;
  double shortfall_ = 0;
  double count_ = 0;
};

class RunningVariances {
 public:
  // rough: guessed variances, or empty.
  RunningVariances(std::size_t dimension, std::vector<double> rough)
      : rough_(std::move(rough)), mean_(dimension), sum_squares_(dimension) {}

  void add(std::span<const double> position);
  [[nodiscard]] std::vector<double> shrunk() const;
  void clear();

 private:
  std::vector<double> rough_;
  double count_ = 0;
  std::vector<double> mean_;
  std::vector<double> sum_squares_;
};

// The iterations (0-based, counted from the start of warm-up) after which the metric is renewed.
[[nodiscard]] std::vector<int> metric_updates(int warmup);

// First iteration whose position counts towards a metric.
[[nodiscard]] int first_metric_iteration(int warmup);

}  // namespace keenfall::numerics
