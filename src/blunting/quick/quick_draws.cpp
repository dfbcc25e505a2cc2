#include "blunting/quick/quick_draws.h"

#include "blunting/quick/quick_fit.h"
#include "numerics/apportioned.h"
#include "numerics/even_points.h"

namespace keenfall::blunting {

std::vector<std::vector<std::size_t>> groups_of_media(const ModelParts& parts, std::size_t media) {
  std::vector<std::vector<std::size_t>> groups;
  for (std::size_t m = 0; m < media; ++m) {
    if (parts.scatter_by_medium || groups.empty()) groups.emplace_back();
    groups.back().push_back(m);
  }
  return groups;
}

Eigen::MatrixXd even_normals(Eigen::Index count) {
  const auto normals_of_one = static_cast<std::size_t>(count);
  numerics::EvenPoints points(normals_of_one + normals_of_one % 2);
  Eigen::MatrixXd normals(count, kQuickDraws);
  for (Eigen::Index d = 0; d < normals.cols(); ++d) {
    numerics::as_normals(points.next(), {normals.col(d).data(), normals_of_one});
  }
  return normals;
}

std::vector<std::size_t> draws_of_parts(const std::vector<MixturePart>& parts) {
  std::vector<double> weights;
  for (const MixturePart& part : parts) weights.push_back(part.weight);
  return numerics::apportioned(weights, kQuickDraws);
}

}  // namespace keenfall::blunting
