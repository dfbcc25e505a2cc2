// Maximum likelihood for numbers of which only an interval may be known: location and scale.
//
// y = coefficients . covariates + scale x standard error. With y the log of a time, logistic errors
// make it log-logistic, smallest-extreme-value errors Weibull, normal errors log-normal. Newton's
// method with halved steps; standard errors from the inverse of the observed information. A fit
// that did not converge is a result (`converged`). Meeker & Escobar 1998 (from memory).
#pragma once

#include <limits>
#include <optional>
#include <span>
#include <vector>

namespace keenfall::numerics {

enum class LocationScaleErrors { logistic, smallest_extreme_value, normal };

// Known is after < y <= by; infinite bounds are open, equal ones an exact number.
struct CensoredNumber {
  double after = -std::numeric_limits<double>::infinity();
  double by = std::numeric_limits<double>::infinity();
  double count = 1;                     // so many of them, > 0
  std::vector<double> covariates{1.0};  // the intercept's 1 included; as many for every number
};

struct CensoredFit {
  bool converged = false;
  std::vector<double> coefficients;
  double scale = 1;
  double log_likelihood = 0;            // of y
  std::vector<double> standard_errors;  // of the coefficients, then of log scale unless it is
                                        // fixed; empty where the information is singular
};

// At least one number, each with after <= by. The first covariate is the intercept. Where it is
// given, the scale is not fitted.
[[nodiscard]] CensoredFit fit_censored(std::span<const CensoredNumber> numbers,
                                       LocationScaleErrors errors,
                                       std::optional<double> fixed_scale = std::nullopt);

}  // namespace keenfall::numerics
