#include "blunting/quick/quick_fit.h"

#include "blunting/quick/mixture.h"
#include "blunting/quick/quick_draws.h"
#include "blunting/quick/scatter_group.h"

#include <cmath>
#include <map>

namespace keenfall::blunting {

namespace {

// Draws of what stands last in the parts: arms' levels and, before them, specimens.
class Drawer {
 public:
  // normals: a column for every draw, a row for each of what is drawn.
  Drawer(const ScatterGroup& group, const Eigen::MatrixXd& normals, QuickFit& fit)
      : group_(group), fit_(fit), normals_(normals) {}

  void draw(const std::vector<MixturePart>& parts) {
    const auto draws = draws_of_parts(parts);
    Eigen::Index first = 0;
    for (std::size_t p = 0; p < parts.size(); ++p) {
      const auto draws_of_part = static_cast<Eigen::Index>(draws[p]);
      if (draws_of_part > 0) keep_some(parts[p].given, normals_.middleCols(first, draws_of_part));
      first += draws_of_part;
    }
  }

 private:
  void keep_some(const GivenNormal& given, const Eigen::Ref<const Eigen::MatrixXd>& normals) {
    levels_ = normals;
    given.factor.bottomRightCorner(normals.rows(), normals.rows())
        .triangularView<Eigen::Lower>()
        .transpose()
        .solveInPlace(levels_);
    levels_.colwise() += given.mean.tail(normals.rows());
    for (Eigen::Index d = 0; d < levels_.cols(); ++d) keep(d);
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
  const Eigen::MatrixXd& normals_;
  Eigen::MatrixXd levels_;
};

}  // namespace

QuickFit quick_fit(const BluntingData& data, const ModelSpec& spec) {
  const ModelParts parts = parts_for(spec, data);
  const auto groups = groups_of_media(parts, data.media.size());
  QuickFit fit;
  fit.arms.resize(data.arms.size());
  std::map<Eigen::Index, Eigen::MatrixXd> normals;  // by how many are drawn at once
  for (const std::vector<std::size_t>& media : groups) {
    ScatterGroup group(data, spec, parts, media);
    const std::vector<MixturePart> parts_of_group = mixture_of(group, spec.priors);
    const Eigen::Index drawn = parts_of_group.front().given.mean.size() -
                               static_cast<Eigen::Index>(group.first_specimen());
    if (!normals.contains(drawn)) normals.emplace(drawn, even_normals(drawn));
    Drawer(group, normals.at(drawn), fit).draw(parts_of_group);
  }
  return fit;
}

BluntingFit quick_draws(const BluntingData& data, const ModelSpec& spec) {
  constexpr std::size_t kParts = 4;
  return {.parts = parts_for(spec, data),
          .chains = kParts,
          .draws_per_chain = kQuickDraws / kParts,
          .arms = quick_fit(data, spec).arms};
}

}  // namespace keenfall::blunting
