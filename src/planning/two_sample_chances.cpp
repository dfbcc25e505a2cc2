#include "planning/two_sample_chances.h"

#include "base/require.h"
#include "numerics/two_samples.h"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/students_t.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace keenfall::planning {

namespace {

using verdicts::Verdict;

constexpr double kChance = 0.8;

double normal_below(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

double degrees_of_freedom(int runs_each) { return 2.0 * (runs_each - 1); }

double t_quantile(int runs_each, double probability) {
  return boost::math::quantile(boost::math::students_t(degrees_of_freedom(runs_each)), probability);
}

double error_of_ratio(const TwoSamples& samples) {
  return samples.log_sd * std::sqrt(2.0 / samples.runs_each);
}

// The verdicts where the interval reaches so far, by where the middle falls; its chance there.
struct Reach {
  double at_95 = 0;
  double at_90 = 0;
};

void add(VerdictProbabilities& sum, const TwoSamples& samples, const Reach& reach, double weight) {
  const double log_margin = std::log(samples.worth_it_margin);
  const double centre = std::log(samples.true_ratio);
  const double error = error_of_ratio(samples);
  const auto below = [&](double bound) { return normal_below((bound - centre) / error); };
  // On each side, from the middle outwards: the same or open, too little, longer, worth having.
  const double same_until = std::clamp(log_margin - reach.at_90, 0.0, reach.at_95);
  const double little_until = std::max(log_margin - reach.at_90, reach.at_95);
  const double longer_until = std::max(log_margin + reach.at_95, little_until);
  const auto put = [&](Verdict verdict, double from, double to) {
    if (to > from) sum[static_cast<std::size_t>(verdict)] += weight * (below(to) - below(from));
  };
  put(Verdict::practically_the_same, -same_until, same_until);
  put(Verdict::not_settled, same_until, reach.at_95);
  put(Verdict::not_settled, -reach.at_95, -same_until);
  put(Verdict::longer_but_too_little_to_matter, reach.at_95, little_until);
  put(Verdict::shorter_but_too_little_to_matter, -little_until, -reach.at_95);
  put(Verdict::longer, little_until, longer_until);
  put(Verdict::shorter, -longer_until, -little_until);
  sum[static_cast<std::size_t>(Verdict::longer_and_worth_having)] +=
      weight * (1 - below(longer_until));
  sum[static_cast<std::size_t>(Verdict::shorter_by_enough_to_matter)] +=
      weight * below(-longer_until);
}

}  // namespace

VerdictProbabilities two_sample_chances(const TwoSamples& samples) {
  base::require(samples.runs_each >= 2 && samples.log_sd > 0 && samples.true_ratio > 0 &&
                    samples.worth_it_margin > 1,
                "two samples have runs that scatter, a ratio and a margin");
  const double t_95 = t_quantile(samples.runs_each, 0.975);
  const double t_90 = t_quantile(samples.runs_each, 0.95);
  const double freedom = degrees_of_freedom(samples.runs_each);
  const boost::math::chi_squared squares(freedom);
  // The scatter that is seen, at the middles of so many equal parts of its probability.
  constexpr int kParts = 500;
  VerdictProbabilities sum{};
  for (int part = 0; part < kParts; ++part) {
    const double seen = std::sqrt(boost::math::quantile(squares, (part + 0.5) / kParts) / freedom);
    const double error = seen * error_of_ratio(samples);
    add(sum, samples, {.at_95 = t_95 * error, .at_90 = t_90 * error}, 1.0 / kParts);
  }
  return sum;
}

double chance_of_settling(const TwoSamples& samples) {
  return 1 - two_sample_chances(samples)[static_cast<std::size_t>(Verdict::not_settled)];
}

double half_width_95(int runs_each, double log_sd) {
  base::require(runs_each >= 2 && log_sd > 0, "an interval needs two runs that scatter");
  return std::exp(t_quantile(runs_each, 0.975) *
                  error_of_ratio({.runs_each = runs_each, .log_sd = log_sd}));
}

std::optional<double> smallest_ratio_shown(int runs_each, double log_sd) {
  base::require(runs_each >= 2 && log_sd > 0, "a ratio is shown by two runs that scatter");
  const auto is_shown = [&](double log_ratio) {
    return numerics::power_of({.per_group = static_cast<double>(runs_each),
                               .difference = log_ratio,
                               .sd = log_sd}) >= kChance;
  };
  double low = 0;
  double high = std::log(100.0);
  if (!is_shown(high)) return std::nullopt;
  constexpr int kHalvings = 40;
  for (int step = 0; step < kHalvings; ++step) {
    const double middle = 0.5 * (low + high);
    (is_shown(middle) ? high : low) = middle;
  }
  return std::exp(high);
}

std::optional<int> fewest_runs_to_settle(TwoSamples samples, int most) {
  for (samples.runs_each = 2; samples.runs_each <= most; ++samples.runs_each) {
    if (chance_of_settling(samples) >= kChance) return samples.runs_each;
  }
  return std::nullopt;
}

std::optional<int> fewest_runs_to_call_the_same(TwoSamples samples, int most) {
  samples.true_ratio = 1;
  const auto are_enough = [&samples](int runs_each) {
    samples.runs_each = runs_each;
    return two_sample_chances(samples)[static_cast<std::size_t>(Verdict::practically_the_same)] >=
           kChance;
  };
  if (most < 2 || !are_enough(most)) return std::nullopt;
  int too_few = 1;
  int enough = most;
  while (enough - too_few > 1) {
    const int middle = (too_few + enough) / 2;
    (are_enough(middle) ? enough : too_few) = middle;
  }
  return enough;
}

}  // namespace keenfall::planning
