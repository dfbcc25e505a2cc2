// The media that share one scatter from run to run, fitted quickly: all their runs' parabolas, the
// joint mode, and what is normal given the scatters. Used by quick_fit only.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/model_parts.h"
#include "blunting/inference/model_spec.h"
#include "blunting/quick/run_quadratic.h"

#include <Eigen/Dense>

#include <array>
#include <cstddef>
#include <vector>

namespace keenfall::blunting {

// What is integrated numerically (model_spec.h): sds of logs, and lambda.
struct Hyperparameters {
  double run = 0.25;
  double start = 0.08;
  double shape = 0.12;
  double block = 0.08;
  double specimen = 0.08;
  double start_effect = 0;

  bool operator==(const Hyperparameters&) const = default;
};

// Precision of a run's (log b0, log tau) about where its arm puts them.
[[nodiscard]] Eigen::Matrix2d run_precision(const Hyperparameters& at);

// Normal, given the hyperparameters: mean and Cholesky factor of the precision, arms' levels last.
struct GivenNormal {
  Eigen::VectorXd mean;
  Eigen::MatrixXd factor;  // lower: precision = factor factor'
  double log_evidence = 0;
};

struct WeighedLevel {
  Eigen::Index index = 0;
  double weight = 1;
};

// One run, given the levels x: its own (log b0, log tau) are normal about
// constant + follows (what the levels make of log b0, log tau, log p), with this Cholesky factor.
struct RunGivenLevels {
  std::size_t run = 0;  // place in BluntingData::runs
  std::array<std::vector<WeighedLevel>, 3> levels;
  Eigen::Vector2d constant = Eigen::Vector2d::Zero();
  Eigen::Matrix<double, 2, 3> follows = Eigen::Matrix<double, 2, 3>::Zero();
  Eigen::Matrix2d factor = Eigen::Matrix2d::Zero();  // lower: variance = factor factor'
};

class ScatterGroup {
 public:
  // media: those that share the scatter. data must outlive the group.
  ScatterGroup(const BluntingData& data,
               const ModelSpec& spec,
               const ModelParts& parts,
               const std::vector<std::size_t>& media);

  // Moves the parabolas to the joint mode, and the errors of readings and spots with them.
  void settle(const Hyperparameters& at, int rounds);
  // Then moves the parabolas' tops from the mode to where the posterior's mean lies (Lindley 1980).
  void centre_on_mean(const Hyperparameters& at);
  [[nodiscard]] GivenNormal given(const Hyperparameters& at) const;
  [[nodiscard]] std::vector<RunGivenLevels> runs_given(const Hyperparameters& at) const;

  [[nodiscard]] const ModelParts& parts() const { return parts_; }
  [[nodiscard]] const ReadingScales& scales() const { return scales_; }
  [[nodiscard]] bool has_blocks() const { return blocks_ > 0; }
  [[nodiscard]] bool has_specimens() const { return specimens_ > 0; }
  [[nodiscard]] const std::vector<std::size_t>& arms() const { return arms_; }  // in the data
  // Where an arm's log start, log half keenness and log shape stand, by its place in arms().
  [[nodiscard]] std::size_t levels_of(std::size_t place) const { return first_arm_ + 3 * place; }
  [[nodiscard]] std::size_t first_specimen() const { return first_specimen_; }
  // Of each arm, the specimens it was cut with, by their place after first_specimen().
  [[nodiscard]] const std::vector<std::vector<std::size_t>>& pieces() const { return pieces_; }

 private:
  struct Member {
    const RunData* run = nullptr;
    std::size_t arm = 0;  // place in arms_
    std::size_t medium = 0;
    std::size_t block = 0;     // if the group has blocks and the run one: place + 1
    std::size_t specimen = 0;  // likewise
    CurvePointOfRun at;
    RunQuadratic quadratic;
  };
  // A run's own start and half keenness integrated out: what is left of its parabola in where its
  // arm puts them (y = levels less the parabola's point) and in the shape.
  struct Eliminated {
    Eigen::Matrix3d information;
    Eigen::Vector3d slope;
    double log_constant = 0;
    Eigen::Matrix2d spread;  // of start and half keenness, given the rest
  };

  void place_levels();
  [[nodiscard]] Eigen::Matrix3d spread_of(const Member& member,
                                          const Eigen::MatrixXd& spread_of_levels,
                                          const Eigen::Matrix2d& prior) const;
  void first_guess(Member& member) const;
  [[nodiscard]] Eliminated eliminate(const Member& member, const Eigen::Matrix2d& prior) const;
  void add_priors(const Hyperparameters& at,
                  Eigen::MatrixXd& precision,
                  Eigen::VectorXd& pull) const;
  void move_to(const Eigen::VectorXd& mean, const Hyperparameters& at);
  void estimate_scales();
  template <class Use>
  void each_column(const Member& member, std::size_t row, Use use) const;

  const BluntingData& data_;
  const ModelSpec& spec_;
  ModelParts parts_;
  PriorCentres centres_;
  std::vector<std::size_t> media_;
  std::vector<std::size_t> arms_;
  std::vector<Member> members_;
  std::vector<std::vector<std::size_t>> pieces_;
  ReadingScales scales_;
  std::size_t blocks_ = 0;
  std::size_t specimens_ = 0;
  std::size_t order_drift_at_ = 0;
  std::size_t first_block_ = 0;
  std::size_t first_shape_mean_ = 0;
  std::size_t first_specimen_ = 0;
  std::size_t first_arm_ = 0;
  std::size_t dimension_ = 0;
};

template <class Use>
void ScatterGroup::each_column(const Member& member, std::size_t row, Use use) const {
  const std::size_t arm = levels_of(member.arm);
  use(arm + row, 1.0);
  if (row != 1) return;
  if (member.block > 0) use(first_block_ + member.block - 1, 1.0);
  if (member.specimen > 0) use(first_specimen_ + member.specimen - 1, 1.0);
  if (parts_.order_drift) use(order_drift_at_, member.run->order_place);
}

}  // namespace keenfall::blunting
