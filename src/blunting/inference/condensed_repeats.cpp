#include "blunting/inference/condensed_repeats.h"

#include "base/require.h"
#include "numerics/summaries.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace keenfall::blunting {

namespace {

// Huber's k and, for a standard normal Z: the efficiency (E psi')^2 / E psi^2 and E min(1, k/|Z|).
constexpr double kPullIn = 1.5;
constexpr double kEfficiency = 0.964236;
constexpr double kMeanWeight = 0.973264;

// E psi(Z)^2 with the pull-in at k, closed form.
double mean_square_within(double k) {
  const double density = std::exp(-0.5 * k * k) / std::sqrt(2 * std::numbers::pi);
  const double beyond = std::erfc(k / std::numbers::sqrt2);
  return 1 - beyond - 2 * k * density + k * k * beyond;
}

// What the pulled-in squares of all groups sum to at unit scatter. A residual from the centre of n
// readings has variance 1 - 1/n, so it is pulled in as if k were larger.
double expected_squares(std::span<const std::vector<double>> groups) {
  double sum = 0;
  for (const auto& group : groups) {
    const double n = static_cast<double>(group.size());
    if (n > 1) sum += (n - 1) * mean_square_within(kPullIn / std::sqrt(1 - 1 / n));
  }
  return sum;
}

double weight_of(double residual, double scatter) {
  const double distance = std::abs(residual);
  return distance <= kPullIn * scatter ? 1 : kPullIn * scatter / distance;
}

double centre_of(const std::vector<double>& values, double start, double scatter) {
  double centre = start;
  for (int iteration = 0; iteration < 50; ++iteration) {
    double weights = 0;
    double weighted = 0;
    for (const double v : values) {
      const double w = weight_of(v - centre, scatter);
      weights += w;
      weighted += w * v;
    }
    const double next = weighted / weights;
    const bool settled = std::abs(next - centre) < 1e-10 * scatter;
    centre = next;
    if (settled) break;
  }
  return centre;
}

double degrees_within(std::span<const std::vector<double>> groups) {
  double degrees = 0;
  for (const auto& group : groups) degrees += static_cast<double>(group.size() - 1);
  return degrees;
}

double sum_of_squares_about(std::span<const std::vector<double>> groups,
                            std::span<const double> centres) {
  double sum = 0;
  for (std::size_t g = 0; g < groups.size(); ++g) {
    for (const double v : groups[g]) sum += (v - centres[g]) * (v - centres[g]);
  }
  return sum;
}

std::vector<double> means_of(std::span<const std::vector<double>> groups) {
  std::vector<double> means;
  for (const auto& group : groups) {
    base::require(!group.empty(), "a checkpoint needs at least one reading");
    means.push_back(numerics::mean_of(group));
  }
  return means;
}

// Pooled median absolute deviation, scaled to the normal sd; zero when repeats are mostly
// identical.
double first_guess_of_scatter(std::span<const std::vector<double>> groups) {
  std::vector<double> deviations;
  for (const auto& group : groups) {
    if (group.size() < 2) continue;
    const double middle = numerics::median_of(group);
    for (const double v : group) deviations.push_back(std::abs(v - middle));
  }
  return deviations.empty() ? 0 : 1.4826 * numerics::median_of(std::move(deviations));
}

}  // namespace

CondensedRepeats condense_exactly(std::span<const std::vector<double>> log_readings) {
  const std::vector<double> means = means_of(log_readings);
  CondensedRepeats condensed{.degrees_of_freedom = degrees_within(log_readings),
                             .sum_of_squares = sum_of_squares_about(log_readings, means)};
  for (std::size_t g = 0; g < means.size(); ++g) {
    condensed.checkpoints.push_back(
        {.centre = means[g], .relative_variance = 1 / static_cast<double>(log_readings[g].size())});
  }
  return condensed;
}

CondensedRepeats condense_robustly(std::span<const std::vector<double>> log_readings) {
  const double degrees = degrees_within(log_readings);
  double scatter = degrees > 0 ? first_guess_of_scatter(log_readings) : 0;
  if (!(scatter > 0)) return condense_exactly(log_readings);

  std::vector<double> centres = means_of(log_readings);
  for (std::size_t g = 0; g < centres.size(); ++g) {
    centres[g] = numerics::median_of(log_readings[g]);
  }
  const double expected = expected_squares(log_readings);
  // Huber's second proposal, pooled over checkpoints: centres and scatter in turn.
  for (int iteration = 0; iteration < 30; ++iteration) {
    double squares = 0;
    for (std::size_t g = 0; g < centres.size(); ++g) {
      centres[g] = centre_of(log_readings[g], centres[g], scatter);
      for (const double v : log_readings[g]) {
        const double pulled = (v - centres[g]) * weight_of(v - centres[g], scatter);
        squares += pulled * pulled;
      }
    }
    const double next = std::sqrt(squares / expected);
    const bool settled = std::abs(next - scatter) < 1e-8 * scatter;
    scatter = next;
    if (settled || !(scatter > 0)) break;
  }
  if (!(scatter > 0)) return condense_exactly(log_readings);

  CondensedRepeats condensed{.degrees_of_freedom = degrees,
                             .sum_of_squares = degrees * scatter * scatter};
  for (std::size_t g = 0; g < centres.size(); ++g) {
    double counted = 0;
    for (const double v : log_readings[g]) counted += weight_of(v - centres[g], scatter);
    const double all = static_cast<double>(log_readings[g].size());
    const double efficiency = all > 1 ? kEfficiency : 1;
    counted = std::min(all, counted / kMeanWeight);
    condensed.checkpoints.push_back(
        {.centre = centres[g], .relative_variance = 1 / (efficiency * counted)});
  }
  return condensed;
}

}  // namespace keenfall::blunting
