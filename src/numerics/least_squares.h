// Nonlinear least squares by Levenberg-Marquardt (Eigen's port of MINPACK, Moré 1978).
#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

namespace keenfall::numerics {

// Writes residuals (length n) at parameters (length k); and, when `jacobian` is not empty, the
// derivatives d residual[i] / d parameter[j] at jacobian[i * k + j].
using Residuals = std::function<void(
    std::span<const double> parameters, std::span<double> residuals, std::span<double> jacobian)>;

struct LeastSquaresFit {
  bool converged = false;
  std::vector<double> parameters;
  double sum_of_squares = 0;
  double residual_sd = 0;               // sqrt(sum of squares / (n - k))
  std::vector<double> standard_errors;  // from the Jacobian at the optimum; empty if singular

  bool operator==(const LeastSquaresFit&) const = default;
};

// residual_count > start.size() >= 1.
[[nodiscard]] LeastSquaresFit fit_least_squares(const Residuals& residuals,
                                                std::size_t residual_count,
                                                std::vector<double> start);

}  // namespace keenfall::numerics
