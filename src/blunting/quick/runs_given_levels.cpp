// ScatterGroup: what a single run is, once the levels are known: normal, by its parabola and the
// prior about where its arm, block and piece put it.
#include "blunting/quick/scatter_group.h"

namespace keenfall::blunting {

std::vector<RunGivenLevels> ScatterGroup::runs_given(const Hyperparameters& at) const {
  const Eigen::Matrix2d prior = run_precision(at);
  std::vector<RunGivenLevels> runs;
  for (const Member& member : members_) {
    const RunQuadratic& quadratic = member.quadratic;
    const Eigen::Matrix2d spread = eliminate(member, prior).spread;
    RunGivenLevels given{.run = static_cast<std::size_t>(member.run - data_.runs.data())};
    for (std::size_t row = 0; row < 3; ++row) {
      each_column(member, row, [&](std::size_t level, double weight) {
        given.levels.at(row).push_back(
            {.index = static_cast<Eigen::Index>(level), .weight = weight});
      });
    }
    given.follows.leftCols<2>() = spread * prior;
    given.follows.rightCols<1>() = -spread * quadratic.information.topRightCorner<2, 1>();
    const Eigen::Vector3d place(
        member.at.log_start, member.at.log_half_keenness, member.at.log_shape);
    given.constant = place.head<2>() + spread * quadratic.slope.head<2>() - given.follows * place;
    given.factor = spread.llt().matrixL();
    runs.push_back(std::move(given));
  }
  return runs;
}

}  // namespace keenfall::blunting
