#include "trust/measuring/rivals.h"

#include "blunting/inference/arm_fits.h"
#include "blunting/inference/run_fit.h"
#include "numerics/two_samples.h"
#include "trust/measuring/answered.h"

#include <boost/math/tools/minima.hpp>

#include <cmath>
#include <vector>

namespace keenfall::trust {

namespace {

using blunting::BluntingData;
using blunting::RunFit;
using blunting::RunFitOptions;

struct PairOfRuns {
  blunting::ArmRuns a;
  blunting::ArmRuns b;
};

// Repeats are condensed to means. Absent where a blade has no runs that can be fitted.
std::optional<PairOfRuns> pair_of(const CellTrial& trial) {
  const auto data = blunting::prepare(trial.trial, trial.key, blunting::ReadingErrors::gaussian);
  if (!data) return std::nullopt;
  const std::vector<blunting::ArmRuns> arms = runs_by_arm(*data);
  PairOfRuns pair;
  for (std::size_t i = 0; i < arms.size(); ++i) {
    if (data->arms[i].medium.name != trial.medium) continue;
    (data->arms[i].blade == trial.a ? pair.a : pair.b) = arms[i];
  }
  return pair;
}

// Log half keenness of each run; absent where a curve cannot be fitted.
std::optional<std::vector<double>> halves_of(const blunting::ArmRuns& arm,
                                             const RunFitOptions& options) {
  std::vector<double> halves;
  for (const auto& points : arm.points) {
    if (points.size() < 4) return std::nullopt;
    const RunFit fit = fit_run(points, options);
    if (!fit.converged || !std::isfinite(fit.curve.log_half_keenness)) return std::nullopt;
    halves.push_back(fit.curve.log_half_keenness);
  }
  return halves;
}

std::optional<LogBounds> welch_bounds(const PairOfRuns& pair, const RunFitOptions& options) {
  const auto a = halves_of(pair.a, options);
  const auto b = halves_of(pair.b, options);
  if (!a || !b || a->size() < 2 || b->size() < 2) return std::nullopt;
  const numerics::WelchTest welch = numerics::welch_test(*a, *b);
  return LogBounds{.lo = welch.lo95, .hi = welch.hi95};
}

double best_shape(const PairOfRuns& pair) {
  const auto misfit = [&pair](double log_shape) {
    double squares = 0;
    for (const blunting::ArmRuns* arm : {&pair.a, &pair.b}) {
      for (const auto& points : arm->points) {
        squares += fit_run(points, {.fixed_shape = std::exp(log_shape)}).sum_of_squares;
      }
    }
    return squares;
  };
  constexpr int kBits = 10;
  return std::exp(
      boost::math::tools::brent_find_minima(misfit, std::log(0.2), std::log(2.0), kBits).first);
}

}  // namespace

std::optional<LogBounds> by_curves_of_runs(const CellTrial& trial) {
  const auto pair = pair_of(trial);
  if (!pair) return std::nullopt;
  return welch_bounds(*pair, {});
}

std::optional<LogBounds> by_one_shape(const CellTrial& trial) {
  const auto pair = pair_of(trial);
  if (!pair) return std::nullopt;
  return welch_bounds(*pair, {.fixed_shape = best_shape(*pair)});
}

std::optional<LogBounds> by_plain_posterior(const CellTrial& trial) {
  const blunting::ModelSpec spec = blunting::plain_model();
  const auto data = blunting::prepare(trial.trial, trial.key, spec.errors);
  if (!data) return std::nullopt;
  const auto answer = answer_of(trial, *data, quick_draws(*data, spec));
  if (!answer) return std::nullopt;
  return LogBounds{.lo = answer->half.lo95, .hi = answer->half.hi95};
}

}  // namespace keenfall::trust
