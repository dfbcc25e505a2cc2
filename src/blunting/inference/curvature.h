// The expected curvature of the log posterior: how stiff it is in each direction, at one point.
//
// Fisher information of the readings (Gauss-Newton in the curve) plus the priors' precision; the
// scales are held apart with rough curvatures of their own. Sparse: a run touches its own arm,
// block and specimen only. Always positive definite. Private to the inference, since it speaks
// Eigen.
#pragma once

#include "blunting/inference/blunting_density.h"

#include <Eigen/SparseCore>

#include <span>

namespace keenfall::blunting {

[[nodiscard]] Eigen::SparseMatrix<double> expected_curvature(const BluntingDensity& density,
                                                             std::span<const double> q);

}  // namespace keenfall::blunting
