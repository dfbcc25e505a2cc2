#include "verdicts/each_run.h"

#include "blunting/inference/run_fit.h"
#include "numerics/rearrangement.h"
#include "numerics/signed_rank.h"
#include "numerics/summaries.h"
#include "verdicts/lasting.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace keenfall::verdicts {

namespace {

using blunting::BluntingData;
using blunting::LogLogistic;
using Curves = std::vector<std::optional<LogLogistic>>;

constexpr std::size_t kCheckpointsForAShape = 5;
constexpr double kFarthest = 10;  // times the last cuts: past that a run only says "at least"

std::vector<blunting::RunPoint> points_of(const blunting::RunData& run) {
  std::vector<blunting::RunPoint> points;
  for (const blunting::Checkpoint& checkpoint : run.checkpoints) {
    if (checkpoint.below_resolution) continue;
    points.push_back({.log_cuts = checkpoint.log_cuts,
                      .log_bluntness = checkpoint.log_bluntness,
                      .weight = 1 / checkpoint.relative_variance});
  }
  return points;
}

std::optional<LogLogistic> curve_of_run(const blunting::RunData& run, double arm_shape) {
  const std::vector<blunting::RunPoint> points = points_of(run);
  constexpr std::size_t kFewest = 3;  // for a start and a half keenness
  if (points.size() < kFewest) return std::nullopt;
  blunting::RunFitOptions options;
  if (points.size() < kCheckpointsForAShape) options.fixed_shape = arm_shape;
  blunting::RunFit fit = blunting::fit_run(points, options);
  const auto is_usable = [&run](const blunting::RunFit& found) {
    return found.converged && found.curve.shape > 0 && std::isfinite(found.curve.log_start) &&
           found.curve.log_half_keenness < std::log(kFarthest * run.checkpoints.back().cuts);
  };
  if (!options.fixed_shape && !is_usable(fit)) {
    fit = blunting::fit_run(points, {.fixed_shape = arm_shape});
  }
  return is_usable(fit) ? std::optional(fit.curve) : std::nullopt;
}

struct RunLasting {
  std::optional<std::size_t> block;
  double log_cuts = 0;
};

struct ArmLasting {
  std::vector<RunLasting> runs;
  int left_out = 0;
};

ArmLasting lasting_of(const BluntingData& data,
                      const Curves& curves,
                      std::size_t arm,
                      const At& at) {
  ArmLasting lasting;
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    if (data.runs[r].arm != arm) continue;
    const double log_cuts = curves[r] ? log_cuts_until(data, *curves[r], at) : HUGE_VAL;
    if (std::isfinite(log_cuts)) {
      lasting.runs.push_back({.block = data.runs[r].block, .log_cuts = log_cuts});
    } else {
      ++lasting.left_out;
    }
  }
  return lasting;
}

std::vector<double> numbers_of(const ArmLasting& lasting) {
  std::vector<double> numbers;
  for (const RunLasting& run : lasting.runs) numbers.push_back(run.log_cuts);
  return numbers;
}

std::map<std::size_t, double> means_by_block(const ArmLasting& lasting) {
  std::map<std::size_t, std::vector<double>> gathered;
  for (const RunLasting& run : lasting.runs) {
    if (run.block) gathered[*run.block].push_back(run.log_cuts);
  }
  std::map<std::size_t, double> means;
  for (const auto& [block, numbers] : gathered) means[block] = numerics::mean_of(numbers);
  return means;
}

std::optional<SignedRanks> ranked_by_blocks(const ArmLasting& a, const ArmLasting& b) {
  const std::map<std::size_t, double> of_a = means_by_block(a);
  const std::map<std::size_t, double> of_b = means_by_block(b);
  std::vector<double> differences;
  for (const auto& [block, mean] : of_a) {
    if (of_b.contains(block)) differences.push_back(mean - of_b.at(block));
  }
  constexpr std::size_t kMostBlocks = 200;
  if (differences.size() < 2 || differences.size() > kMostBlocks) return std::nullopt;
  const numerics::SignedRankTest test = numerics::signed_rank_test(differences);
  return SignedRanks{.blocks = static_cast<int>(differences.size()),
                     .p = test.p_two_sided,
                     .smallest_possible_p = test.smallest_possible_p};
}

// Few comparisons can have all arrangements counted; many share the work out.
numerics::Rearranging rearranging(const RunByRunBudget& budget) {
  constexpr double kCounted = 2e6;
  constexpr double kFewest = 2000;
  const double share = std::max(kFewest, kCounted / static_cast<double>(budget.comparisons));
  constexpr double kMostRandom = 20000;
  return {.most_counted = share,
          .random_count = static_cast<int>(std::min(share, kMostRandom)),
          .seed = budget.seed};
}

}  // namespace

std::vector<std::optional<LogLogistic>> curves_of_runs(const BluntingData& data,
                                                       const blunting::BluntingFit& fit) {
  std::vector<double> shapes;
  for (const blunting::ArmDraws& arm : fit.arms) shapes.push_back(numerics::median_of(arm.shape));
  Curves curves;
  for (const blunting::RunData& run : data.runs) {
    curves.push_back(curve_of_run(run, shapes[run.arm]));
  }
  return curves;
}

std::optional<RunByRun> compare_run_by_run(const BluntingData& data,
                                           const Curves& curves,
                                           const Comparison& pair,
                                           const RunByRunBudget& budget) {
  const ArmLasting a = lasting_of(data, curves, pair.a, pair.at);
  const ArmLasting b = lasting_of(data, curves, pair.b, pair.at);
  if (a.runs.empty() || b.runs.empty() || a.runs.size() + b.runs.size() < 3) return std::nullopt;
  const std::vector<double> of_a = numbers_of(a);
  const std::vector<double> of_b = numbers_of(b);
  const numerics::RearrangementTest test =
      numerics::rearrange_means(of_a, of_b, rearranging(budget));
  return RunByRun{.runs_a = static_cast<int>(of_a.size()),
                  .runs_b = static_cast<int>(of_b.size()),
                  .runs_left_out = a.left_out + b.left_out,
                  .ratio = std::exp(numerics::mean_of(of_a) - numerics::mean_of(of_b)),
                  .p = test.p_two_sided,
                  .exact = test.exact,
                  .monte_carlo_error = test.monte_carlo_error,
                  .smallest_possible_p = test.smallest_possible_p,
                  .by_blocks = ranked_by_blocks(a, b)};
}

}  // namespace keenfall::verdicts
