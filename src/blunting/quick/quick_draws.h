// What quick_fit and quick_posterior share: how draws are spread over the parts of a mixture.
#pragma once

#include "blunting/inference/model_parts.h"
#include "blunting/quick/mixture.h"

#include <Eigen/Dense>

#include <cstddef>
#include <vector>

namespace keenfall::blunting {

// The media that share a scatter, each group by the places of its media.
[[nodiscard]] std::vector<std::vector<std::size_t>> groups_of_media(const ModelParts& parts,
                                                                    std::size_t media);

// kQuickDraws columns of as many standard normals, spread evenly over all columns together.
[[nodiscard]] Eigen::MatrixXd even_normals(Eigen::Index count);

// How many of the draws each part gets.
[[nodiscard]] std::vector<std::size_t> draws_of_parts(const std::vector<MixturePart>& parts);

}  // namespace keenfall::blunting
