// Robust errors of a checkpoint's centre: Student's t with 4 degrees of freedom at kRobustScale
// times the checkpoint's standard error (blunting_density.h says why).
#pragma once

namespace keenfall::blunting {

inline constexpr double kRobustScale = 0.831;
inline constexpr double kRobustVariance = kRobustScale * kRobustScale;

// How a reading counts beside one that lies on the curve of a normal: (nu + 1) / (nu + s), s the
// square of its residual in scales.
[[nodiscard]] constexpr double robust_weight(double square) { return 5 / (4 + square); }

}  // namespace keenfall::blunting
