#include "numerics/nuts_warmup.h"

#include <algorithm>
#include <cmath>

namespace keenfall::numerics {

namespace {

// gamma, t0 and kappa of Hoffman & Gelman 2014, section 3.2.1.
constexpr double kShrinkage = 0.05;
constexpr double kEarlyDamping = 10;
constexpr double kForgetting = 0.75;

}  // namespace

void StepSizeTuner::restart(double step_size) {
  centre_ = std::log(10 * step_size);
  log_step_ = std::log(step_size);
  log_step_average_ = 0;
  shortfall_ = 0;
  count_ = 0;
}

void StepSizeTuner::learn(double acceptance) {
  ++count_;
  const double weight = 1 / (count_ + kEarlyDamping);
  shortfall_ = (1 - weight) * shortfall_ + weight * (target_ - acceptance);
  log_step_ = centre_ - shortfall_ * std::sqrt(count_) / kShrinkage;
  const double forget = std::pow(count_, -kForgetting);
  log_step_average_ = forget * log_step_ + (1 - forget) * log_step_average_;
}

double StepSizeTuner::current() const { return std::exp(log_step_); }

double StepSizeTuner::averaged() const {
  return std::exp(count_ > 0 ? log_step_average_ : log_step_);
}

void RunningVariances::add(std::span<const double> position) {
  ++count_;
  for (std::size_t i = 0; i < mean_.size(); ++i) {
    const double delta = position[i] - mean_[i];
    mean_[i] += delta / count_;
    sum_squares_[i] += delta * (position[i] - mean_[i]);
  }
}

std::vector<double> RunningVariances::shrunk() const {
  std::vector<double> variances(mean_.size(), 1.0);
  if (count_ < 3) return rough_.empty() ? variances : rough_;
  for (std::size_t i = 0; i < variances.size(); ++i) {
    const double variance = sum_squares_[i] / (count_ - 1);
    variances[i] = (count_ * variance + 5 * (rough_.empty() ? 1e-3 : rough_[i])) / (count_ + 5);
  }
  return variances;
}

void RunningVariances::clear() {
  count_ = 0;
  std::ranges::fill(mean_, 0.0);
  std::ranges::fill(sum_squares_, 0.0);
}

int first_metric_iteration(int warmup) { return std::min(75, warmup * 15 / 100); }

std::vector<int> metric_updates(int warmup) {
  const int first = first_metric_iteration(warmup);
  const int last = warmup - std::min(50, warmup / 10);
  std::vector<int> updates;
  int window = std::max(10, std::min(25, warmup / 10));
  int end = first + window;
  while (end < last) {
    window *= 2;
    // A window too short to be followed by a longer one is stretched to the end.
    if (end + window > last - window / 2) break;
    updates.push_back(end - 1);
    end += window;
  }
  updates.push_back(last - 1);
  return updates;
}

}  // namespace keenfall::numerics
