// ScatterGroup: from the joint mode to the posterior's mean.
//
// A mode lies off the mean wherever the log likelihood is not a parabola: here, shapes would come
// out too steep and lasting edges too short-lived, by a tenth of an interval's sd and more. The
// first-order step of Lindley 1980 (Trabajos de Estadistica 31, 223-245) is half the third
// derivatives contracted with the posterior variance; for a curve m with weight w at each
// checkpoint that adds -w (m'' V m' + m' tr(V m'') / 2) to the slope.
#include "blunting/quick/scatter_group.h"

#include <cmath>

namespace keenfall::blunting {

namespace {

// spread: the posterior variance V of (log b0, log tau, log p).
Eigen::Vector3d bend_of(const RunData& run,
                        const CurvePointOfRun& at,
                        const ReadingScales& scales,
                        const Eigen::Matrix3d& spread) {
  const double shape = std::exp(at.log_shape);
  const double spot = scales.checkpoint_scatter * scales.checkpoint_scatter;
  const double reading = scales.reading_scatter * scales.reading_scatter;
  Eigen::Vector3d bend = Eigen::Vector3d::Zero();
  for (const Checkpoint& checkpoint : run.checkpoints) {
    // At the start the curve is straight in log b0; a bound says too little to bend.
    if (checkpoint.cuts <= 0 || checkpoint.below_resolution) continue;
    const double place = shape * (checkpoint.log_cuts - at.log_half_keenness);
    const double share = 1 / (1 + std::exp(-place));
    const double steepening = share * (1 - share);
    const Eigen::Vector3d slope(1, -shape * share, place * share);
    Eigen::Matrix3d second = Eigen::Matrix3d::Zero();
    second(1, 1) = shape * shape * steepening;
    second(1, 2) = second(2, 1) = -shape * (share + place * steepening);
    second(2, 2) = place * (share + place * steepening);
    const double weight = 1 / (spot + checkpoint.relative_variance * reading);
    bend -= weight * (second * (spread * slope) + 0.5 * second.cwiseProduct(spread).sum() * slope);
  }
  return bend;
}

}  // namespace

// Of (log b0, log tau, log p) of one run: its own, and what it follows the levels by.
Eigen::Matrix3d ScatterGroup::spread_of(const Member& member,
                                        const Eigen::MatrixXd& spread_of_levels,
                                        const Eigen::Matrix2d& prior) const {
  Eigen::Matrix3d levels = Eigen::Matrix3d::Zero();
  for (std::size_t row = 0; row < 3; ++row) {
    each_column(member, row, [&](std::size_t i, double at_i) {
      for (std::size_t other = 0; other < 3; ++other) {
        each_column(member, other, [&](std::size_t j, double at_j) {
          levels(static_cast<Eigen::Index>(row), static_cast<Eigen::Index>(other)) +=
              at_i * at_j *
              spread_of_levels(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
        });
      }
    });
  }
  const Eigen::Matrix2d alone = eliminate(member, prior).spread;
  Eigen::Matrix3d follows = Eigen::Matrix3d::Zero();
  follows.topLeftCorner<2, 2>() = alone * prior;
  follows.topRightCorner<2, 1>() = -alone * member.quadratic.information.topRightCorner<2, 1>();
  follows(2, 2) = 1;
  Eigen::Matrix3d spread = follows * levels * follows.transpose();
  spread.topLeftCorner<2, 2>() += alone;
  return spread;
}

void ScatterGroup::centre_on_mean(const Hyperparameters& at) {
  const GivenNormal now = given(at);
  const Eigen::Index n = now.mean.size();
  Eigen::MatrixXd root = Eigen::MatrixXd::Identity(n, n);
  now.factor.triangularView<Eigen::Lower>().solveInPlace(root);
  const Eigen::MatrixXd spread_of_levels = root.transpose() * root;
  const Eigen::Matrix2d prior = run_precision(at);
  for (Member& member : members_) {
    const Eigen::Matrix3d spread = spread_of(member, spread_of_levels, prior);
    member.quadratic.slope += bend_of(*member.run, member.at, scales_, spread);
  }
}

}  // namespace keenfall::blunting
