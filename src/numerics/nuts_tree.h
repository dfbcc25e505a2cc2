// One transition of the no-U-turn sampler: a trajectory doubled until it turns back on itself, and
// a point drawn from it. Internal to nuts.cpp; see nuts.h for the sources.
#pragma once

#include "numerics/nuts.h"
#include "numerics/random.h"

#include <span>
#include <vector>

namespace keenfall::numerics {

struct PhasePoint {
  std::vector<double> position;
  std::vector<double> momentum;
  std::vector<double> gradient;
  double log_density = 0;
};

struct Transition {
  double acceptance = 0;  // mean Metropolis acceptance over the trajectory, 0 to 1
  bool diverged = false;
  int gradient_evaluations = 0;
};

class NutsTree {
 public:
  NutsTree(LogDensity density, std::size_t dimension, int max_tree_depth);

  // variances: the diagonal of the inverse metric (estimated variances of the coordinates).
  void set_metric(std::span<const double> variances);
  void move_to(std::span<const double> position);
  [[nodiscard]] const PhasePoint& here() const { return here_; }

  [[nodiscard]] Transition step(double step_size, RandomStream& random);

  // A step size whose single leapfrog step is accepted about `target` of the time (Hoffman &
  // Gelman, algorithm 4).
  [[nodiscard]] double reasonable_step_size(double start, double target, RandomStream& random);

 private:
  // The part of a trajectory built so far in one direction: the momenta at its inner and outer ends
  // (as seen from the whole trajectory) and their sum, total weight, and the point drawn from it.
  struct Subtree {
    std::vector<double> inner_momentum;
    std::vector<double> outer_momentum;
    std::vector<double> momentum_sum;
    double log_weight = 0;
    std::vector<double> sample_position;
    std::vector<double> sample_gradient;
    double sample_log_density = 0;
  };

  void leapfrog(PhasePoint& point, double step_size);
  [[nodiscard]] double log_joint(const PhasePoint& point) const;
  void draw_momentum(PhasePoint& point, RandomStream& random) const;
  [[nodiscard]] bool keeps_going(std::span<const double> momentum_sum,
                                 std::span<const double> left_momentum,
                                 std::span<const double> right_momentum) const;
  // Grows `end` by 2^depth leapfrog steps in its direction. False: it turned back or diverged.
  bool build(int depth,
             double step_size,
             double start_log_joint,
             PhasePoint& end,
             Subtree& subtree,
             Transition& transition,
             RandomStream& random);

  LogDensity density_;
  std::vector<double> variances_;
  int max_tree_depth_;
  PhasePoint here_;
  // Scratch, so that no step asks for memory: the halves of a subtree by its depth, and the rest of
  // a trajectory.
  std::vector<Subtree> near_;
  std::vector<Subtree> far_;
  Subtree grown_;
  PhasePoint left_;
  PhasePoint right_;
  std::vector<double> old_end_;  // momentum there
  std::vector<double> momentum_sum_;
  std::vector<double> with_first_;  // a part's momenta with the first of the next
  std::vector<double> with_last_;   // with the last of the one before
};

}  // namespace keenfall::numerics
