#include "blunting/quick/quick_fit.h"

#include "blunting/quick/mixture.h"
#include "blunting/quick/scatter_group.h"
#include "numerics/apportioned.h"
#include "numerics/even_points.h"

#include <cmath>

namespace keenfall::blunting {

namespace {

// Draws of what stands last in the parts: arms' levels and, before them, specimens.
class Drawer {
 public:
  Drawer(const ScatterGroup& group, std::size_t dimension, QuickFit& fit)
      : group_(group),
        fit_(fit),
        count_(static_cast<Eigen::Index>(dimension - group.first_specimen())),
        points_(static_cast<std::size_t>(count_ + count_ % 2)) {}

  void draw(const std::vector<MixturePart>& parts) {
    std::vector<double> weights;
    for (const MixturePart& part : parts) weights.push_back(part.weight);
    const auto draws = numerics::apportioned(weights, kQuickDraws);
    for (std::size_t p = 0; p < parts.size(); ++p) {
      if (draws[p] > 0) keep_some(parts[p].given, static_cast<Eigen::Index>(draws[p]));
    }
  }

 private:
  void keep_some(const GivenNormal& given, Eigen::Index draws) {
    levels_.resize(count_, draws);
    const auto count = static_cast<std::size_t>(count_);
    for (Eigen::Index d = 0; d < draws; ++d) {
      numerics::as_normals(points_.next(), {levels_.col(d).data(), count});
    }
    given.factor.bottomRightCorner(count_, count_)
        .triangularView<Eigen::Lower>()
        .transpose()
        .solveInPlace(levels_);
    levels_.colwise() += given.mean.tail(count_);
    for (Eigen::Index d = 0; d < draws; ++d) keep(d);
  }

  void keep(Eigen::Index draw) {
    const std::size_t first = group_.first_specimen();
    for (std::size_t place = 0; place < group_.arms().size(); ++place) {
      const auto at = static_cast<Eigen::Index>(group_.levels_of(place) - first);
      double pieces = 0;
      for (const std::size_t piece : group_.pieces()[place]) {
        pieces += levels_(static_cast<Eigen::Index>(piece), draw) /
                  static_cast<double>(group_.pieces()[place].size());
      }
      ArmDraws& arm = fit_.arms[group_.arms()[place]];
      arm.log_start.push_back(levels_(at, draw));
      arm.log_half_keenness.push_back(levels_(at + 1, draw) + pieces);
      arm.log_half_keenness_steel.push_back(levels_(at + 1, draw));
      arm.shape.push_back(std::exp(levels_(at + 2, draw)));
    }
  }

  const ScatterGroup& group_;
  QuickFit& fit_;
  Eigen::Index count_;
  numerics::EvenPoints points_;
  Eigen::MatrixXd levels_;
};

}  // namespace

QuickFit quick_fit(const BluntingData& data, const ModelSpec& spec) {
  const ModelParts parts = parts_for(spec, data);
  std::vector<std::vector<std::size_t>> groups;
  for (std::size_t m = 0; m < data.media.size(); ++m) {
    if (parts.scatter_by_medium || groups.empty()) groups.emplace_back();
    groups.back().push_back(m);
  }
  QuickFit fit;
  fit.arms.resize(data.arms.size());
  for (const std::vector<std::size_t>& media : groups) {
    ScatterGroup group(data, spec, parts, media);
    const std::vector<MixturePart> parts_of_group = mixture_of(group, spec.priors);
    const auto dimension = static_cast<std::size_t>(parts_of_group.front().given.mean.size());
    Drawer(group, dimension, fit).draw(parts_of_group);
  }
  return fit;
}

}  // namespace keenfall::blunting
