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

// The part of a trajectory built so far in one direction: the momenta at its inner and outer ends
// (as seen from the whole trajectory) and their sum, total weight, and the point drawn from it.
struct NutsTree::Subtree {
  std::vector<double> inner_momentum;
  std::vector<double> outer_momentum;
  std::vector<double> momentum_sum;
  double log_weight = -HUGE_VAL;
  std::vector<double> sample_position;
  std::vector<double> sample_gradient;
  double sample_log_density = 0;
};

NutsTree::NutsTree(LogDensity density, std::size_t dimension, int max_tree_depth)
    : density_(std::move(density)), variances_(dimension, 1.0), max_tree_depth_(max_tree_depth) {
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
    subtree = {.inner_momentum = end.momentum,
               .outer_momentum = end.momentum,
               .momentum_sum = end.momentum,
               .log_weight = log_weight,
               .sample_position = end.position,
               .sample_gradient = end.gradient,
               .sample_log_density = end.log_density};
    return true;
  }
  Subtree near;
  if (!build(depth - 1, step_size, start_log_joint, end, near, transition, random)) return false;
  Subtree far;
  if (!build(depth - 1, step_size, start_log_joint, end, far, transition, random)) return false;

  subtree.log_weight = log_sum_of(near.log_weight, far.log_weight);
  Subtree& chosen = std::log(random.uniform()) < far.log_weight - subtree.log_weight ? far : near;
  subtree.sample_position = std::move(chosen.sample_position);
  subtree.sample_gradient = std::move(chosen.sample_gradient);
  subtree.sample_log_density = chosen.sample_log_density;
  subtree.momentum_sum = near.momentum_sum;
  for (std::size_t i = 0; i < variances_.size(); ++i)
    subtree.momentum_sum[i] += far.momentum_sum[i];

  // Also across the seam, so that two half-turns are not taken for none.
  std::vector<double> near_and_first = near.momentum_sum;
  std::vector<double> last_and_far = far.momentum_sum;
  for (std::size_t i = 0; i < variances_.size(); ++i) {
    near_and_first[i] += far.inner_momentum[i];
    last_and_far[i] += near.outer_momentum[i];
  }
  const bool going = keeps_going(subtree.momentum_sum, near.inner_momentum, far.outer_momentum) &&
                     keeps_going(near_and_first, near.inner_momentum, far.inner_momentum) &&
                     keeps_going(last_and_far, near.outer_momentum, far.outer_momentum);
  subtree.inner_momentum = std::move(near.inner_momentum);
  subtree.outer_momentum = std::move(far.outer_momentum);
  return going;
}

Transition NutsTree::step(double step_size, RandomStream& random) {
  draw_momentum(here_, random);
  const double start_log_joint = log_joint(here_);
  PhasePoint left = here_;
  PhasePoint right = here_;
  std::vector<double> momentum_sum = here_.momentum;
  double log_weight = 0;
  Transition transition;

  for (int depth = 0; depth < max_tree_depth_; ++depth) {
    const bool to_the_right = random.uniform() < 0.5;
    const double signed_step = to_the_right ? step_size : -step_size;
    PhasePoint& end = to_the_right ? right : left;
    const std::vector<double> old_end = end.momentum;
    Subtree grown;
    if (!build(depth, signed_step, start_log_joint, end, grown, transition, random)) break;

    // Biased progressive sampling: favours the newer half.
    if (std::log(random.uniform()) < grown.log_weight - log_weight) {
      here_.position = std::move(grown.sample_position);
      here_.gradient = std::move(grown.sample_gradient);
      here_.log_density = grown.sample_log_density;
    }
    log_weight = log_sum_of(log_weight, grown.log_weight);

    std::vector<double> old_and_first = momentum_sum;
    std::vector<double> last_and_grown = grown.momentum_sum;
    for (std::size_t i = 0; i < variances_.size(); ++i) {
      old_and_first[i] += grown.inner_momentum[i];
      last_and_grown[i] += old_end[i];
      momentum_sum[i] += grown.momentum_sum[i];
    }
    const PhasePoint& far_side = to_the_right ? left : right;
    if (!keeps_going(momentum_sum, left.momentum, right.momentum) ||
        !keeps_going(old_and_first, far_side.momentum, grown.inner_momentum) ||
        !keeps_going(last_and_grown, old_end, grown.outer_momentum)) {
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
