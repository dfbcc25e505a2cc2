#include "numerics/least_squares.h"

#include "base/require.h"

#include <Eigen/Dense>
#include <unsupported/Eigen/NonLinearOptimization>

#include <cmath>

namespace keenfall::numerics {

namespace {

using Matrix = Eigen::MatrixXd;
using RowMatrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
using Vector = Eigen::VectorXd;

// The shape Eigen's optimiser asks of a problem.
class Problem {
 public:
  Problem(const Residuals& residuals, Eigen::Index values, Eigen::Index inputs)
      : residuals_(residuals), values_(values), inputs_(inputs) {}

  [[nodiscard]] int values() const { return static_cast<int>(values_); }

  int operator()(const Vector& parameters, Vector& values) const {
    residuals_(as_span(parameters), as_span(values), {});
    return 0;
  }

  int df(const Vector& parameters, Matrix& jacobian) const {
    Vector values(values_);
    RowMatrix rows(values_, inputs_);
    residuals_(
        as_span(parameters), as_span(values), {rows.data(), static_cast<std::size_t>(rows.size())});
    jacobian = rows;
    return 0;
  }

 private:
  static std::span<const double> as_span(const Vector& v) {
    return {v.data(), static_cast<std::size_t>(v.size())};
  }
  static std::span<double> as_span(Vector& v) {
    return {v.data(), static_cast<std::size_t>(v.size())};
  }

  const Residuals& residuals_;
  Eigen::Index values_;
  Eigen::Index inputs_;
};

}  // namespace

LeastSquaresFit fit_least_squares(const Residuals& residuals,
                                  std::size_t residual_count,
                                  std::vector<double> start) {
  base::require(!start.empty() && residual_count > start.size(),
                "least squares needs more residuals than parameters");
  const auto count = static_cast<Eigen::Index>(residual_count);
  const auto inputs = static_cast<Eigen::Index>(start.size());
  Problem problem(residuals, count, inputs);
  Eigen::LevenbergMarquardt<Problem> optimiser(problem);
  optimiser.parameters.ftol = 1e-14;
  optimiser.parameters.xtol = 1e-14;
  optimiser.parameters.maxfev = 2000;
  Vector parameters = Eigen::Map<const Vector>(start.data(), inputs);
  const auto status = optimiser.minimize(parameters);

  Vector values(count);
  problem(parameters, values);
  LeastSquaresFit fit{.sum_of_squares = values.squaredNorm()};
  fit.parameters.assign(parameters.data(), parameters.data() + inputs);
  fit.converged = status > 0 &&
                  status != Eigen::LevenbergMarquardtSpace::TooManyFunctionEvaluation &&
                  std::isfinite(fit.sum_of_squares);
  fit.residual_sd = std::sqrt(fit.sum_of_squares / static_cast<double>(count - inputs));

  Matrix jacobian(count, inputs);
  problem.df(parameters, jacobian);
  // Columns brought to one length: parameters of very different sizes are not taken for singular.
  const Vector lengths = jacobian.colwise().norm();
  if (lengths.minCoeff() > 0) jacobian *= lengths.cwiseInverse().asDiagonal();
  const Eigen::FullPivLU<Matrix> information(jacobian.transpose() * jacobian);
  if (information.isInvertible()) {
    const Matrix covariance = information.inverse() * fit.residual_sd * fit.residual_sd;
    for (Eigen::Index i = 0; i < inputs; ++i) {
      fit.standard_errors.push_back(std::sqrt(covariance(i, i)) / lengths(i));
    }
  }
  return fit;
}

}  // namespace keenfall::numerics
