#include "blunting/times/medium_of_times.h"

#include "blunting/inference/model_spec.h"
#include "blunting/inference/place_in.h"
#include "blunting/times/time_density.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace keenfall::blunting {

double logistic_scale(double run_scatter) {
  return std::hypot(run_scatter, kTestError) * std::numbers::sqrt3 / std::numbers::pi;
}

// Height, slope and curvature of the log posterior; arms first, then effects.
struct MediumOfTimes::Surface {
  double height = 0;
  Eigen::VectorXd slope;
  Eigen::MatrixXd precision;
};

MediumOfTimes::MediumOfTimes(const TimeData& data, std::size_t medium)
    : log_centre_(data.log_centre) {
  std::vector<std::size_t> blocks;
  std::vector<std::size_t> specimens;
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    const GroupsOfRun& group = data.groups.runs[r];
    if (group.medium != medium) continue;
    Member member{.bounds = data.runs[r].log_bounds(), .arm = place_in(arms_, group.arm)};
    if (group.block) member.block = place_in(blocks, *group.block);
    if (group.specimen) member.specimen = place_in(specimens, *group.specimen);
    members_.push_back(member);
  }
  blocks_ = blocks.size();
  specimens_ = specimens.size();
  for (Member& member : members_) {
    if (member.specimen) *member.specimen += blocks_;
  }
}

double MediumOfTimes::log_prior_of(const Eigen::VectorXd& effects,
                                   const TimeScatters& scatters) const {
  const auto blocks = static_cast<Eigen::Index>(blocks_);
  const auto specimens = static_cast<Eigen::Index>(specimens_);
  return -0.5 * effects.head(blocks).squaredNorm() / (scatters.block * scatters.block) -
         0.5 * effects.tail(specimens).squaredNorm() / (scatters.specimen * scatters.specimen) -
         static_cast<double>(blocks_) * std::log(scatters.block) -
         static_cast<double>(specimens_) * std::log(scatters.specimen);
}

MediumOfTimes::Surface MediumOfTimes::surface_at(const Eigen::VectorXd& at,
                                                 const TimeScatters& scatters) const {
  const auto arms = static_cast<Eigen::Index>(arms_.size());
  const auto effects = static_cast<Eigen::Index>(effect_count());
  const double sd = PriorScales{}.log_half_keenness_sd;
  Surface surface{.height = log_prior_of(at.tail(effects), scatters),
                  .slope = Eigen::VectorXd::Zero(arms + effects),
                  .precision = Eigen::MatrixXd::Zero(arms + effects, arms + effects)};
  const auto add_prior = [&](Eigen::Index i, double centre, double prior_sd) {
    surface.slope[i] -= (at[i] - centre) / (prior_sd * prior_sd);
    surface.precision(i, i) += 1 / (prior_sd * prior_sd);
  };
  for (Eigen::Index a = 0; a < arms; ++a) {
    add_prior(a, log_centre_, sd);
    surface.height -= 0.5 * std::pow((at[a] - log_centre_) / sd, 2);
  }
  for (Eigen::Index e = 0; e < effects; ++e) {
    const bool is_block = e < static_cast<Eigen::Index>(blocks_);
    add_prior(arms + e, 0, is_block ? scatters.block : scatters.specimen);
  }
  const double scale = logistic_scale(scatters.run);
  for (const Member& member : members_) {
    std::vector<Eigen::Index> parts{static_cast<Eigen::Index>(member.arm)};
    if (member.block) parts.push_back(arms + static_cast<Eigen::Index>(*member.block));
    if (member.specimen) parts.push_back(arms + static_cast<Eigen::Index>(*member.specimen));
    double location = 0;
    for (const Eigen::Index i : parts) location += at[i];
    const TimeLikelihood run = likelihood_of_bounds(member.bounds, location, scale);
    surface.height += run.log_likelihood;
    for (const Eigen::Index i : parts) {
      surface.slope[i] += run.by_location;
      for (const Eigen::Index j : parts) surface.precision(i, j) -= run.by_location_twice;
    }
  }
  return surface;
}

// Newton's steps, halved until they lead upwards.
EffectsNormal MediumOfTimes::effects_given(const TimeScatters& scatters) const {
  constexpr int kMostSteps = 60;
  constexpr double kNear = 1e-6;  // of a step, in units of its own precision, squared
  const auto arms = static_cast<Eigen::Index>(arms_.size());
  const auto effects = static_cast<Eigen::Index>(effect_count());
  Eigen::VectorXd at = Eigen::VectorXd::Zero(arms + effects);
  at.head(arms).setConstant(log_centre_);
  Surface surface = surface_at(at, scatters);
  Eigen::LLT<Eigen::MatrixXd> solver(surface.precision);
  Eigen::VectorXd step = solver.solve(surface.slope);
  for (int s = 0; s < kMostSteps && step.dot(surface.slope) > kNear; ++s) {
    const Surface next = surface_at(at + step, scatters);
    if (!(next.height > surface.height)) {
      step *= 0.5;
      continue;
    }
    at += step;
    surface = next;
    solver.compute(surface.precision);
    step = solver.solve(surface.slope);
  }
  const Eigen::MatrixXd factor = solver.matrixL();
  return {.mean = at.tail(effects),
          .factor = factor.bottomRightCorner(effects, effects),
          .log_evidence = surface.height - factor.diagonal().array().log().sum()};
}

}  // namespace keenfall::blunting
