#include "verdicts/planned_looks.h"

#include "base/require.h"
#include "blunting/inference/model_spec.h"
#include "numerics/random.h"
#include "numerics/summaries.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <span>

namespace keenfall::verdicts {

namespace {

constexpr int kSimulated = 20'000;
constexpr int kMostArms = 8;  // more change the factor by less than simulating does
// Scatters from run to run (log sd) that a plan must bear: careful, usual, careless (common
// practice, no source).
constexpr std::array kScatters{0.15, 0.25, 0.4};

double normal_cdf(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

// Half-width of the posterior interval of a difference of two arms' means, by the pooled sum of
// squares of their runs: normal runs, the scatter with the model's half-normal prior, the means
// with a prior as good as flat.
class HalfWidths {
 public:
  HalfWidths(int runs_each, int arms, double tail) : runs_each_(runs_each) {
    const double freedom = static_cast<double>(arms) * (runs_each - 1);
    for (int i = 0; i < kPoints; ++i) {
      const double log_squares = kLowest + kStep * i;
      log_half_width_[static_cast<std::size_t>(i)] =
          std::log(half_width(std::exp(log_squares), freedom, tail));
    }
  }

  [[nodiscard]] double at(double sum_of_squares) const {
    const double place =
        std::clamp((std::log(sum_of_squares) - kLowest) / kStep, 0.0, kPoints - 1.001);
    const auto below = static_cast<std::size_t>(place);
    const double share = place - static_cast<double>(below);
    return std::exp((1 - share) * log_half_width_[below] + share * log_half_width_[below + 1]);
  }

 private:
  [[nodiscard]] double half_width(double squares, double freedom, double tail) const {
    const double prior = blunting::PriorScales{}.run_scatter;
    std::array<double, kScales> sd{};
    std::array<double, kScales> weight{};
    double largest = -HUGE_VAL;
    for (std::size_t i = 0; i < kScales; ++i) {
      sd[i] = 0.005 * std::exp(0.08 * static_cast<double>(i));  // to 2.9
      const double variance = sd[i] * sd[i];
      weight[i] = (1 - freedom) * std::log(sd[i]) - 0.5 * squares / variance -
                  0.5 * variance / (prior * prior);
      largest = std::max(largest, weight[i]);
    }
    double total = 0;
    for (double& w : weight) total += w = std::exp(w - largest);
    double low = 0;
    double high = 30 * std::sqrt(2.0 / runs_each_);
    constexpr int kHalvings = 40;
    for (int step = 0; step < kHalvings; ++step) {
      const double middle = 0.5 * (low + high);
      double below = 0;
      for (std::size_t i = 0; i < kScales; ++i) {
        below += weight[i] * normal_cdf(middle / (sd[i] * std::sqrt(2.0 / runs_each_)));
      }
      (below / total < 1 - tail ? low : high) = middle;
    }
    return 0.5 * (low + high);
  }

  static constexpr int kPoints = 120;
  static constexpr std::size_t kScales = 80;
  static constexpr double kLowest = -9;  // log sum of squares: from 0.0001
  static constexpr double kStep = 0.13;  // to 720
  int runs_each_;
  std::array<double, kPoints> log_half_width_{};
};

// What a simulated trial shows at one look, in half-widths of single intervals.
struct Seen {
  double largest_95 = 0;  // of all pairs' distances from equality
  double largest_90 = 0;
  double towards_same = 0;  // of the first pair, one-sided, at 90 %
};

struct Look {
  int runs_each;
  HalfWidths at_95;
  HalfWidths at_90;
};

std::vector<Look> looks_of(const LooksPlan& plan, int arms) {
  std::vector<Look> looks;
  for (const int runs : plan.runs_each) {
    looks.push_back({runs, HalfWidths(runs, arms, 0.025), HalfWidths(runs, arms, 0.05)});
  }
  return looks;
}

// One trial, seen at every look. All arms last equally long.
void simulate(std::span<const Look> looks,
              int arms,
              double run_scatter,
              numerics::RandomStream& random,
              std::span<Seen> seen) {
  std::vector<double> sums(static_cast<std::size_t>(arms));
  double squares = 0;
  int runs = 0;
  for (std::size_t k = 0; k < looks.size(); ++k) {
    for (; runs < looks[k].runs_each; ++runs) {
      for (double& sum : sums) {
        const double run = run_scatter * random.normal();
        sum += run;
        squares += run * run;
      }
    }
    double about_means = squares;
    for (const double sum : sums) about_means -= sum * sum / runs;
    const double half_95 = looks[k].at_95.at(about_means);
    const double half_90 = looks[k].at_90.at(about_means);
    const auto [least, most] = std::ranges::minmax(sums);
    seen[k] = {.largest_95 = (most - least) / runs / half_95,
               .largest_90 = (most - least) / runs / half_90,
               .towards_same = (sums[0] - sums[1]) / runs / half_90};
  }
}

double quantile(std::vector<double> values, double probability) {
  std::ranges::sort(values);
  return numerics::quantile_of_sorted(values, probability);
}

// trials x looks
std::vector<Seen> simulate_many(const LooksPlan& plan, int arms, double scatter, base::Seed seed) {
  const std::vector<Look> looks = looks_of(plan, arms);
  std::vector<Seen> seen(kSimulated * looks.size());
  constexpr std::uint64_t kLooksStream = 3000;
  numerics::RandomStream random(seed, kLooksStream);
  for (std::size_t t = 0; t < kSimulated; ++t) {
    simulate(looks, arms, scatter, random, std::span(seen).subspan(t * looks.size(), looks.size()));
  }
  return seen;
}

std::vector<double> at_look(const std::vector<Seen>& seen,
                            std::size_t look,
                            std::size_t looks,
                            double Seen::*what) {
  std::vector<double> values;
  for (std::size_t i = look; i < seen.size(); i += looks) values.push_back(seen[i].*what);
  return values;
}

// The factor that keeps the largest over all looks within bounds with the given probability, when
// each look by itself is held to `single` half-widths.
double factor_over(const std::vector<Seen>& seen,
                   std::span<const double> single,
                   double Seen::*what,
                   double probability) {
  std::vector<double> largest;
  for (std::size_t i = 0; i < seen.size(); i += single.size()) {
    double most = 0;
    for (std::size_t k = 0; k < single.size(); ++k) {
      most = std::max(most, seen[i + k].*what / single[k]);
    }
    largest.push_back(most);
  }
  return std::max(1.0, quantile(std::move(largest), probability));
}

void require_plan(const LooksPlan& plan) {
  base::require(!plan.runs_each.empty() && plan.arms >= 2, "a plan has looks and arms to compare");
  base::require(plan.runs_each.front() >= 2 && plan.runs_each.back() <= 1000 &&
                    std::ranges::adjacent_find(plan.runs_each, std::ranges::greater_equal{}) ==
                        plan.runs_each.end(),
                "looks rise from at least 2 runs to at most 1000");
}

}  // namespace

LookStretch stretch_for_looks(const LooksPlan& plan, base::Seed seed) {
  require_plan(plan);
  if (plan.runs_each.size() == 1) return {};
  const std::size_t looks = plan.runs_each.size();
  const int arms = std::min(plan.arms, kMostArms);
  LookStretch stretch;
  for (const double scatter : kScatters) {
    const std::vector<Seen> pair = simulate_many(plan, 2, scatter, seed);
    const std::vector<Seen> family = arms > 2 ? simulate_many(plan, arms, scatter, seed) : pair;
    // What the intervals of a whole family are stretched by at each look already.
    std::vector<double> together(looks, 1.0);
    for (std::size_t k = 0; k < looks; ++k) {
      together[k] = quantile(at_look(family, k, looks, &Seen::largest_95), 0.95) /
                    quantile(at_look(pair, k, looks, &Seen::largest_95), 0.95);
    }
    const std::vector<double> alone(looks, 1.0);
    stretch.at_95 = std::max(stretch.at_95, factor_over(family, together, &Seen::largest_95, 0.95));
    stretch.at_90 = std::max(stretch.at_90, factor_over(pair, alone, &Seen::towards_same, 0.95));
  }
  return stretch;
}

RatioBounds stretched(const RatioBounds& bounds, double median, const LookStretch& stretch) {
  const auto moved = [median](double bound, double factor) {
    return median * std::pow(bound / median, factor);
  };
  return {.lo90 = moved(bounds.lo90, stretch.at_90),
          .hi90 = moved(bounds.hi90, stretch.at_90),
          .lo95 = moved(bounds.lo95, stretch.at_95),
          .hi95 = moved(bounds.hi95, stretch.at_95)};
}

double false_answers_unadjusted(const LooksPlan& plan, double run_scatter, base::Seed seed) {
  require_plan(plan);
  const std::vector<Seen> seen = simulate_many(plan, 2, run_scatter, seed);
  const std::size_t looks = plan.runs_each.size();
  int crossed = 0;
  for (std::size_t i = 0; i < seen.size(); i += looks) {
    const auto trial = std::span(seen).subspan(i, looks);
    if (std::ranges::any_of(trial, [](const Seen& look) { return look.largest_95 > 1; })) ++crossed;
  }
  return static_cast<double>(crossed) / kSimulated;
}

}  // namespace keenfall::verdicts
