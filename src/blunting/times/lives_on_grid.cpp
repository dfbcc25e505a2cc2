#include "blunting/times/lives_on_grid.h"

#include "blunting/inference/model_spec.h"
#include "blunting/times/interval_likelihood.h"

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {

namespace {

constexpr double kFarthest = 4;  // prior sds of an arm's median from its centre
constexpr double kStep = 0.03;   // between places, in logs
constexpr double kMargin = 2;    // the largest effect that is told from a larger one, in logs
constexpr auto kBeyond = static_cast<std::size_t>(kMargin / kStep) + 2;  // places of the margin

}  // namespace

LivesOnGrid::LivesOnGrid(const MediumOfTimes& medium, double run_scatter) : medium_(medium) {
  const double sd = PriorScales{}.log_half_keenness_sd;
  const auto places = static_cast<std::size_t>(2 * kFarthest * sd / kStep) + 1;
  for (std::size_t i = 0; i < places; ++i) {
    const double z = -kFarthest + kStep * static_cast<double>(i) / sd;
    prior_.push_back(-0.5 * z * z);
  }
  const double scale = logistic_scale(run_scatter);
  const double first = medium.log_centre() - kFarthest * sd - kStep * static_cast<double>(kBeyond);
  for (const MediumOfTimes::Member& member : medium.members()) {
    std::vector<double> heights;
    for (std::size_t i = 0; i < places + 2 * kBeyond; ++i) {
      const double location = first + kStep * static_cast<double>(i);
      heights.push_back(likelihood_of_bounds(member.bounds, location, scale).log_likelihood);
    }
    of_runs_.push_back(std::move(heights));
  }
}

std::vector<ArmOnGrid> LivesOnGrid::arms_given(const Eigen::VectorXd& effects) const {
  std::vector<ArmOnGrid> arms(medium_.arms().size(), {.shares = prior_});
  for (std::size_t r = 0; r < of_runs_.size(); ++r) {
    const MediumOfTimes::Member& member = medium_.members()[r];
    double effect = 0;
    if (member.block) effect += effects[static_cast<Eigen::Index>(*member.block)];
    if (member.specimen) effect += effects[static_cast<Eigen::Index>(*member.specimen)];
    const double steps = std::clamp(effect, -kMargin, kMargin) / kStep;
    const double whole = std::floor(steps);
    const double part = steps - whole;
    const double* shifted = of_runs_[r].data() + kBeyond + static_cast<std::ptrdiff_t>(whole);
    std::vector<double>& heights = arms[member.arm].shares;
    for (std::size_t i = 0; i < heights.size(); ++i) {
      heights[i] += (1 - part) * shifted[i] + part * shifted[i + 1];
    }
  }
  for (ArmOnGrid& arm : arms) {
    const double top = *std::ranges::max_element(arm.shares);
    double sum = 0;
    for (double& share : arm.shares) {
      sum += std::exp(share - top);
      share = sum;
    }
    for (double& share : arm.shares) share /= sum;
    arm.log_evidence = top + std::log(sum);
  }
  return arms;
}

// Along a straight line within a step; a step is centred on its place.
double LivesOnGrid::log_cuts_at(const ArmOnGrid& arm, double share) const {
  const auto above = std::ranges::upper_bound(arm.shares, share);
  const auto i =
      std::min(static_cast<std::size_t>(above - arm.shares.begin()), arm.shares.size() - 1);
  const double below = i == 0 ? 0 : arm.shares[i - 1];
  const double within = arm.shares[i] > below ? (share - below) / (arm.shares[i] - below) : 0.5;
  const double first = medium_.log_centre() - kFarthest * PriorScales{}.log_half_keenness_sd;
  return first + kStep * (static_cast<double>(i) + within - 0.5);
}

}  // namespace keenfall::blunting
