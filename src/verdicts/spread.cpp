#include "verdicts/spread.h"

#include "base/require.h"
#include "numerics/summaries.h"

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>

namespace keenfall::verdicts {

namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

// Differences between the blades, as independent directions: what the posterior says of each, and
// how sure it is.
struct Directions {
  Vector estimate;
  Vector variance;
};

// Rows: Helmert's contrasts, orthonormal, each blade against the mean of those before it.
Matrix contrasts_of(Eigen::Index blades) {
  Matrix contrasts = Matrix::Zero(blades - 1, blades);
  for (Eigen::Index i = 1; i < blades; ++i) {
    const auto before = static_cast<double>(i);
    const double length = std::sqrt(before * (before + 1));
    for (Eigen::Index j = 0; j < i; ++j) contrasts(i - 1, j) = 1 / length;
    contrasts(i - 1, i) = -before / length;
  }
  return contrasts;
}

Directions directions_of(std::span<const blunting::Draws> lasting) {
  const auto blades = static_cast<Eigen::Index>(lasting.size());
  const auto count = static_cast<Eigen::Index>(lasting.front().size());
  Matrix draws(blades, count);
  for (Eigen::Index i = 0; i < blades; ++i) {
    draws.row(i) = Eigen::Map<const Vector>(lasting[static_cast<std::size_t>(i)].data(), count);
  }
  const Matrix contrasts = contrasts_of(blades) * draws;
  const Vector mean = contrasts.rowwise().mean();
  const Matrix centred = contrasts.colwise() - mean;
  const Matrix covariance = centred * centred.transpose() / static_cast<double>(count - 1);
  const Eigen::SelfAdjointEigenSolver<Matrix> axes(covariance);
  constexpr double kSmallest = 1e-12;  // of draws that do not differ at all
  return {.estimate = axes.eigenvectors().transpose() * mean,
          .variance = axes.eigenvalues().cwiseMax(kSmallest)};
}

constexpr std::size_t kGrid = 240;
constexpr double kSmallestSpread = 1e-3;
constexpr double kLargestSpread = 6;
constexpr double kPriorScale = 1;

double spread_at(std::size_t i) {
  const double share = static_cast<double>(i) / (kGrid - 1);
  return kSmallestSpread * std::pow(kLargestSpread / kSmallestSpread, share);
}

// The posterior of s on the grid, added up from its start to 1.
std::array<double, kGrid> chances_up_to(const Directions& directions) {
  std::array<double, kGrid> logs{};
  for (std::size_t i = 0; i < kGrid; ++i) {
    const double s = spread_at(i);
    // The grid is even in log s: its prior has one s more.
    logs[i] = -0.5 * (s / kPriorScale) * (s / kPriorScale) + std::log(s);
    for (Eigen::Index d = 0; d < directions.estimate.size(); ++d) {
      const double variance = s * s + directions.variance(d);
      logs[i] -=
          0.5 * (std::log(variance) + directions.estimate(d) * directions.estimate(d) / variance);
    }
  }
  const double largest = *std::ranges::max_element(logs);
  std::array<double, kGrid> sums{};
  double sum = 0;
  for (std::size_t i = 0; i < kGrid; ++i) sums[i] = sum += std::exp(logs[i] - largest);
  for (double& part : sums) part /= sum;
  return sums;
}

}  // namespace

blunting::Draws draws_of_spread(std::span<const blunting::Draws> lasting,
                                std::size_t count,
                                numerics::RandomStream& random) {
  base::require(lasting.size() >= 2 && lasting.front().size() >= 2,
                "a spread needs two blades with draws");
  const Directions directions = directions_of(lasting);
  const std::array<double, kGrid> chances = chances_up_to(directions);
  blunting::Draws spreads;
  spreads.reserve(count);
  for (std::size_t i = 0; i < count; ++i) {
    const auto at = std::ranges::lower_bound(chances, random.uniform());
    const auto place = std::min<std::ptrdiff_t>(at - chances.begin(), kGrid - 1);
    const double s = spread_at(static_cast<std::size_t>(place));
    double squares = 0;
    for (Eigen::Index d = 0; d < directions.estimate.size(); ++d) {
      const double share = s * s / (s * s + directions.variance(d));
      const double drawn = share * directions.estimate(d) +
                           std::sqrt(share * directions.variance(d)) * random.normal();
      squares += drawn * drawn;
    }
    spreads.push_back(std::sqrt(squares / static_cast<double>(directions.estimate.size())));
  }
  return spreads;
}

}  // namespace keenfall::verdicts
