#include "numerics/censored_fit.h"

#include "base/require.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace keenfall::numerics {

namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

// The standard distribution at z, in logs, and d log density / dz.
struct StandardAt {
  double log_below = 0;
  double log_above = 0;
  double log_density = 0;
  double slope = 0;
};

StandardAt standard_at(LocationScaleErrors errors, double z) {
  switch (errors) {
    case LocationScaleErrors::logistic: {
      const double below = -std::log1p(std::exp(-z));
      const double above = -std::log1p(std::exp(z));
      return {below, above, below + above, std::exp(above) - std::exp(below)};
    }
    case LocationScaleErrors::smallest_extreme_value: {
      const double power = std::exp(z);
      return {std::log(-std::expm1(-power)), -power, z - power, 1 - power};
    }
    case LocationScaleErrors::normal: {
      const double root = z / std::numbers::sqrt2;
      return {std::log(0.5 * std::erfc(-root)),
              std::log(0.5 * std::erfc(root)),
              -0.5 * z * z - 0.5 * std::log(2 * std::numbers::pi),
              -z};
    }
  }
  return {};
}

// Log likelihood of one number and its derivatives.
struct Contribution {
  double value = 0;
  double by_location = 0;
  double by_log_scale = 0;
};

// log(F(b) - F(a)), from the tail in which both are small.
double log_share_between(const StandardAt& a, const StandardAt& b) {
  if (a.log_below > a.log_above) {
    return a.log_above + std::log1p(-std::exp(b.log_above - a.log_above));
  }
  return b.log_below + std::log1p(-std::exp(a.log_below - b.log_below));
}

Contribution contribution_of(const CensoredNumber& number,
                             LocationScaleErrors errors,
                             double location,
                             double scale) {
  const double a = (number.after - location) / scale;
  const double b = (number.by - location) / scale;
  if (a == b) {
    const StandardAt at = standard_at(errors, a);
    return {at.log_density - std::log(scale), -at.slope / scale, -a * at.slope - 1};
  }
  StandardAt low{.log_below = -HUGE_VAL, .log_density = -HUGE_VAL};
  StandardAt high{.log_above = -HUGE_VAL, .log_density = -HUGE_VAL};
  if (std::isfinite(a)) low = standard_at(errors, a);
  if (std::isfinite(b)) high = standard_at(errors, b);
  const double value = log_share_between(low, high);
  const double at_low = std::exp(low.log_density - value);
  const double at_high = std::exp(high.log_density - value);
  return {value,
          -(at_high - at_low) / scale,
          -((std::isfinite(b) ? b * at_high : 0) - (std::isfinite(a) ? a * at_low : 0))};
}

// Log likelihood and gradient at the coefficients followed by log scale, if that is fitted.
class CensoredLikelihood {
 public:
  CensoredLikelihood(std::span<const CensoredNumber> numbers,
                     LocationScaleErrors errors,
                     std::optional<double> fixed_scale)
      : numbers_(numbers), errors_(errors), fixed_scale_(fixed_scale) {}

  [[nodiscard]] Eigen::Index coefficients() const {
    return static_cast<Eigen::Index>(numbers_.front().covariates.size());
  }
  [[nodiscard]] Eigen::Index parameters() const { return coefficients() + (fixed_scale_ ? 0 : 1); }
  [[nodiscard]] double scale_at(const VectorXd& at) const {
    return fixed_scale_ ? *fixed_scale_ : std::exp(at[coefficients()]);
  }

  struct Value {
    double value = 0;
    VectorXd gradient;
  };

  [[nodiscard]] Value operator()(const VectorXd& at) const {
    const double scale = scale_at(at);
    Value all{.gradient = VectorXd::Zero(parameters())};
    for (const CensoredNumber& number : numbers_) {
      const Eigen::Map<const VectorXd> covariates(number.covariates.data(), coefficients());
      const double location = covariates.dot(at.head(coefficients()));
      const Contribution one = contribution_of(number, errors_, location, scale);
      all.value += number.count * one.value;
      all.gradient.head(coefficients()) += number.count * one.by_location * covariates;
      if (!fixed_scale_) all.gradient[coefficients()] += number.count * one.by_log_scale;
    }
    return all;
  }

  // Minus the second derivatives, by central differences of the gradient.
  [[nodiscard]] MatrixXd information(const VectorXd& at) const {
    MatrixXd matrix(parameters(), parameters());
    for (Eigen::Index i = 0; i < parameters(); ++i) {
      const double step = 1e-5 * (std::abs(at[i]) + 1e-2);
      VectorXd moved = at;
      moved[i] = at[i] + step;
      const VectorXd above = (*this)(moved).gradient;
      moved[i] = at[i] - step;
      matrix.col(i) = ((*this)(moved).gradient - above) / (2 * step);
    }
    return 0.5 * (matrix + matrix.transpose());
  }

 private:
  std::span<const CensoredNumber> numbers_;
  LocationScaleErrors errors_;
  std::optional<double> fixed_scale_;
};

// Intercept and scale from the middles of the intervals, or the one bound there is.
VectorXd rough_start(std::span<const CensoredNumber> numbers,
                     const CensoredLikelihood& likelihood) {
  double count = 0;
  double sum = 0;
  double squares = 0;
  for (const CensoredNumber& number : numbers) {
    const double middle = !std::isfinite(number.after) ? number.by
                          : !std::isfinite(number.by)  ? number.after
                                                       : 0.5 * (number.after + number.by);
    count += number.count;
    sum += number.count * middle;
    squares += number.count * middle * middle;
  }
  VectorXd start = VectorXd::Zero(likelihood.parameters());
  start[0] = sum / count;
  const double variance = squares / count - start[0] * start[0];
  if (likelihood.parameters() > likelihood.coefficients()) {
    start[likelihood.coefficients()] = 0.5 * std::log(std::max(variance, 1e-4));
  }
  return start;
}

// Newton's step; where the information is not positive, more and more of the gradient's.
VectorXd uphill_step(const MatrixXd& information, const VectorXd& gradient) {
  const VectorXd diagonal = information.diagonal().cwiseAbs();
  double damping = 0;
  for (int tries = 0; tries < 30; ++tries) {
    MatrixXd damped = information;
    damped.diagonal() += damping * diagonal;
    const Eigen::LLT<MatrixXd> root(damped);
    if (root.info() == Eigen::Success) return root.solve(gradient);
    damping = damping == 0 ? 1e-3 : 4 * damping;
  }
  return gradient;
}

}  // namespace

CensoredFit fit_censored(std::span<const CensoredNumber> numbers,
                         LocationScaleErrors errors,
                         std::optional<double> fixed_scale) {
  base::require(!numbers.empty(), "there are numbers to fit");
  base::require(!fixed_scale || *fixed_scale > 0, "a scale is above zero");
  for (const CensoredNumber& number : numbers) {
    base::require(number.after <= number.by, "the bounds of a number stand in order");
    base::require(number.covariates.size() == numbers.front().covariates.size(),
                  "every number has as many covariates");
  }
  constexpr int kMostSteps = 200;
  constexpr double kStill = 1e-9;  // step over parameter
  const CensoredLikelihood likelihood(numbers, errors, fixed_scale);
  VectorXd at = rough_start(numbers, likelihood);
  auto here = likelihood(at);
  CensoredFit fit;
  for (int i = 0; i < kMostSteps && !fit.converged; ++i) {
    VectorXd step = uphill_step(likelihood.information(at), here.gradient);
    auto next = likelihood(at + step);
    for (int halved = 0; halved < 40 && !(next.value >= here.value); ++halved) {
      step *= 0.5;
      next = likelihood(at + step);
    }
    fit.converged = (step.array().abs() <= kStill * (at.array().abs() + 1e-3)).all();
    if (!(next.value >= here.value)) break;
    at += step;
    here = next;
  }
  const auto k = static_cast<std::size_t>(likelihood.coefficients());
  fit.coefficients.assign(at.data(), at.data() + k);
  fit.scale = likelihood.scale_at(at);
  fit.log_likelihood = here.value;
  const Eigen::LLT<MatrixXd> root(likelihood.information(at));
  if (root.info() == Eigen::Success) {
    const VectorXd errors_of =
        root.solve(MatrixXd::Identity(at.size(), at.size())).diagonal().cwiseSqrt();
    fit.standard_errors.assign(errors_of.data(), errors_of.data() + errors_of.size());
  }
  return fit;
}

}  // namespace keenfall::numerics
