// The log posterior density of how long edges last by one test, with its gradient.
//
//   log T(r) = mu(arm) + block x medium + specimen + scale(medium) x standard logistic
//   (scale pi / sqrt 3)^2 = (run-to-run sd)^2 + (the test's own error, 0.1)^2
//   mu ~ N(centre of the data, 2); run-to-run sd ~ half-normal, one a medium
//
// Runs are integrated out by the logistic; priors are those of the curves (model_spec.h). Scales
// enter as logs, block and specimen effects in units of their scatter; Jacobians are included.
// Order of the coordinates: mu of every arm, log sd of every medium, [log block scatter, blocks],
// [log specimen scatter, specimens]. Method page: docs/methods/edge-lives.md
#pragma once

#include "base/seed.h"
#include "blunting/times/time_data.h"

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace keenfall::blunting {

// Sd of log cuts: what a test's own error leaves open even if all edges were alike. The spot that
// is tried errs by about 0.04 of a log reading, where curves rise by about 0.4 a log cut (both
// usual ones; common practice, no source).
inline constexpr double kTestError = 0.1;

struct TimeValues {
  std::vector<double> arm;          // mu
  std::vector<double> run_scatter;  // per medium, sd of log cuts
  std::vector<double> block;        // effects on log cuts
  std::vector<double> specimen;
  double block_scatter = 0;  // 0 where there are none
  double specimen_scatter = 0;
};

class TimeDensity {
 public:
  // data must outlive the density.
  explicit TimeDensity(const TimeData& data);

  [[nodiscard]] std::size_t dimension() const { return dimension_; }

  // Log density up to a constant; writes the gradient. Both spans have dimension() elements.
  [[nodiscard]] double operator()(std::span<const double> q, std::span<double> gradient) const;

  [[nodiscard]] TimeValues values_at(std::span<const double> q) const;

  [[nodiscard]] std::vector<double> start_for(base::Seed seed, std::uint64_t chain) const;

  // About the posterior variance of every coordinate, for the sampler to begin with.
  [[nodiscard]] std::vector<double> rough_variances() const;

 private:
  struct Slopes;  // derivatives by the parameters in their own terms

  [[nodiscard]] double add_runs(const TimeValues& values, Slopes& slopes) const;

  const TimeData& data_;
  std::vector<LogTimeBounds> bounds_;
  std::size_t first_scatter_ = 0;  // places of the coordinates
  std::size_t first_block_ = 0;    // of the log scatter, effects follow; as dimension: none
  std::size_t first_specimen_ = 0;
  std::size_t dimension_ = 0;
};

}  // namespace keenfall::blunting
