#include "numerics/nuts_tree.h"

#include "base/require.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace keenfall::numerics {

namespace {

// Beyond this loss of energy a trajectory has left the region the step size can follow.
constexpr double kDivergenceEnergy = 1000;

double log_sum_of(double a, double b) {
  if (a < b) std::swap(a, b);
  return b == -HUGE_VAL ? a : a + std::log1p(std::exp(b - a));
}

}  // namespace

NutsTree::NutsTree(LogDensity density, std::size_t dimension, int max_tree_depth)
    : density_(std::move(density)),
      variances_(dimension, 1.0),
      max_tree_depth_(max_tree_depth),
      near_(static_cast<std::size_t>(max_tree_depth)),
      far_(near_.size()) {
  here_.position.resize(dimension);
  here_.momentum.resize(dimension);
  here_.gradient.resize(dimension);
}

void NutsTree::set_metric(std::span<const double> variances) {
  variances_.assign(variances.begin(), variances.end());
}

void NutsTree::move_to(std::span<const double> position) {
  here_.position.assign(position.begin(), position.end());
  here_.log_density = density_(here_.position, here_.gradient);
  base::require(std::isfinite(here_.log_density), "a chain must start where the density is finite");
}

double NutsTree::log_joint(const PhasePoint& point) const {
  double kinetic = 0;
  for (std::size_t i = 0; i < variances_.size(); ++i) {
    kinetic += variances_[i] * point.momentum[i] * point.momentum[i];
  }
  return point.log_density - 0.5 * kinetic;
}

void NutsTree::draw_momentum(PhasePoint& point, RandomStream& random) const {
  for (std::size_t i = 0; i < variances_.size(); ++i) {
    point.momentum[i] = random.normal() / std::sqrt(variances_[i]);
  }
}

void NutsTree::leapfrog(PhasePoint& point, double step_size) {
  for (std::size_t i = 0; i < variances_.size(); ++i) {
    point.momentum[i] += 0.5 * step_size * point.gradient[i];
    point.position[i] += step_size * variances_[i] * point.momentum[i];
  }
  point.log_density = density_(point.position, point.gradient);
  if (!std::isfinite(point.log_density)) {
    point.log_density = -HUGE_VAL;
    return;
  }
  for (std::size_t i = 0; i < variances_.size(); ++i) {
    point.momentum[i] += 0.5 * step_size * point.gradient[i];
  }
}

// Betancourt's generalised criterion: the summed momentum still points along both ends' velocities.
bool NutsTree::keeps_going(std::span<const double> momentum_sum,
                           std::span<const double> left_momentum,
                           std::span<const double> right_momentum) const {
  double along_left = 0;
  double along_right = 0;
  for (std::size_t i = 0; i < variances_.size(); ++i) {
    const double velocity_sum = variances_[i] * momentum_sum[i];
    along_left += velocity_sum * left_momentum[i];
    along_right += velocity_sum * right_momentum[i];
  }
  return along_left > 0 && along_right > 0;
}

bool NutsTree::build(int depth,
                     double step_size,
                     double start_log_joint,
                     PhasePoint& end,
                     Subtree& subtree,
                     Transition& transition,
                     RandomStream& random) {
  if (depth == 0) {
    leapfrog(end, step_size);
    ++transition.gradient_evaluations;
    const double gain = log_joint(end) - start_log_joint;
    const double log_weight = std::isnan(gain) ? -HUGE_VAL : gain;
    transition.acceptance += std::min(1.0, std::exp(log_weight));
    if (log_weight < -kDivergenceEnergy) {
      transition.diverged = true;
      return false;
    }
    subtree.inner_momentum = end.momentum;
    subtree.outer_momentum = end.momentum;
    subtree.momentum_sum = end.momentum;
    subtree.log_weight = log_weight;
    subtree.sample_position = end.position;
    subtree.sample_gradient = end.gradient;
    subtree.sample_log_density = end.log_density;
    return true;
  }
  Subtree& near = near_[static_cast<std::size_t>(depth)];
  if (!build(depth - 1, step_size, start_log_joint, end, near, transition, random)) return false;
  Subtree& far = far_[static_cast<std::size_t>(depth)];
  if (!build(depth - 1, step_size, start_log_joint, end, far, transition, random)) return false;

  subtree.log_weight = log_sum_of(near.log_weight, far.log_weight);
  Subtree& chosen = std::log(random.uniform()) < far.log_weight - subtree.log_weight ? far : near;
  subtree.sample_position.swap(chosen.sample_position);
  subtree.sample_gradient.swap(chosen.sample_gradient);
  subtree.sample_log_density = chosen.sample_log_density;
  subtree.momentum_sum = near.momentum_sum;
  for (std::size_t i = 0; i < variances_.size(); ++i)
    subtree.momentum_sum[i] += far.momentum_sum[i];

  // Also across the seam, so that two half-turns are not taken for none.
  with_first_ = near.momentum_sum;
  with_last_ = far.momentum_sum;
  for (std::size_t i = 0; i < variances_.size(); ++i) {
    with_first_[i] += far.inner_momentum[i];
    with_last_[i] += near.outer_momentum[i];
  }
  const bool going = keeps_going(subtree.momentum_sum, near.inner_momentum, far.outer_momentum) &&
                     keeps_going(with_first_, near.inner_momentum, far.inner_momentum) &&
                     keeps_going(with_last_, near.outer_momentum, far.outer_momentum);
  subtree.inner_momentum.swap(near.inner_momentum);
  subtree.outer_momentum.swap(far.outer_momentum);
  return going;
}

Transition NutsTree::step(double step_size, RandomStream& random) {
  draw_momentum(here_, random);
  const double start_log_joint = log_joint(here_);
  left_ = here_;
  right_ = here_;
  momentum_sum_ = here_.momentum;
  double log_weight = 0;
  Transition transition;

  for (int depth = 0; depth < max_tree_depth_; ++depth) {
    const bool to_the_right = random.uniform() < 0.5;
    const double signed_step = to_the_right ? step_size : -step_size;
    PhasePoint& end = to_the_right ? right_ : left_;
    old_end_ = end.momentum;
    if (!build(depth, signed_step, start_log_joint, end, grown_, transition, random)) break;

    // Biased progressive sampling: favours the newer half.
    if (std::log(random.uniform()) < grown_.log_weight - log_weight) {
      here_.position.swap(grown_.sample_position);
      here_.gradient.swap(grown_.sample_gradient);
      here_.log_density = grown_.sample_log_density;
    }
    log_weight = log_sum_of(log_weight, grown_.log_weight);

    with_first_ = momentum_sum_;
    with_last_ = grown_.momentum_sum;
    for (std::size_t i = 0; i < variances_.size(); ++i) {
      with_first_[i] += grown_.inner_momentum[i];
      with_last_[i] += old_end_[i];
      momentum_sum_[i] += grown_.momentum_sum[i];
    }
    const PhasePoint& far_side = to_the_right ? left_ : right_;
    if (!keeps_going(momentum_sum_, left_.momentum, right_.momentum) ||
        !keeps_going(with_first_, far_side.momentum, grown_.inner_momentum) ||
        !keeps_going(with_last_, old_end_, grown_.outer_momentum)) {
      break;
    }
  }
  transition.acceptance /= std::max(1, transition.gradient_evaluations);
  return transition;
}

double NutsTree::reasonable_step_size(double start, double target, RandomStream& random) {
  double step_size = start;
  int direction = 0;
  for (int tries = 0; tries < 60; ++tries) {
    PhasePoint point = here_;
    draw_momentum(point, random);
    const double before = log_joint(point);
    leapfrog(point, step_size);
    const double gain = log_joint(point) - before;
    const bool too_good = !std::isnan(gain) && gain > std::log(target);
    const int wanted = too_good ? 1 : -1;
    if (direction == 0) direction = wanted;
    if (wanted != direction) break;
    step_size *= direction > 0 ? 2 : 0.5;
  }
  return step_size;
}

}  // namespace keenfall::numerics
