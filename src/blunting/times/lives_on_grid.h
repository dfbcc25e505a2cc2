// How long each arm of a medium lasts, on a grid of places, where the scatter from run to run and
// the effects of blocks and specimens are given: then nothing ties the arms. Used by quick_times
// only.
#pragma once

#include "blunting/times/medium_of_times.h"

#include <Eigen/Dense>

#include <cstddef>
#include <vector>

namespace keenfall::blunting {

// An arm's posterior: how much of it lies up to each place, and all of it in logs.
struct ArmOnGrid {
  std::vector<double> shares;
  double log_evidence = 0;
};

class LivesOnGrid {
 public:
  // medium must outlive the grid.
  LivesOnGrid(const MediumOfTimes& medium, double run_scatter);

  // As MediumOfTimes::arms(). effects: as in EffectsNormal.
  [[nodiscard]] std::vector<ArmOnGrid> arms_given(const Eigen::VectorXd& effects) const;

  // Log cuts up to which a share (0 to below 1) of the arm's posterior lies.
  [[nodiscard]] double log_cuts_at(const ArmOnGrid& arm, double share) const;

 private:
  const MediumOfTimes& medium_;
  std::vector<double> prior_;                 // of an arm, in logs, by place
  std::vector<std::vector<double>> of_runs_;  // log likelihood, over places and a margin
};

}  // namespace keenfall::blunting
