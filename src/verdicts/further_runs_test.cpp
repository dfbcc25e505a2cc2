#include "verdicts/further_runs.h"

#include "numerics/random.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <numbers>
#include <numeric>
#include <stdexcept>
#include <vector>

namespace keenfall::verdicts {
namespace {

// A comparison of 4 runs each with run scatter 0.25, decided by intervals of 1.64 and 1.96 sds.
PresentKnowledge a_comparison(double log_ratio) {
  const double sd = 0.25 * std::sqrt(2.0 / 4);
  return {.log_ratio = log_ratio,
          .log_ratio_sd = sd,
          .half_width_90 = 1.645 * sd,
          .half_width_95 = 1.96 * sd,
          .runs_a = 4,
          .runs_b = 4,
          .worth_it_margin = 1.5};
}

// The truth drawn from what is known, n more runs simulated, means and known scatter judged again.
double simulated_chance(const PresentKnowledge& now, int more, double run_scatter) {
  numerics::RandomStream random({31}, static_cast<std::uint64_t>(more));
  const int trials = 40000;
  int settled = 0;
  for (int t = 0; t < trials; ++t) {
    const double truth = now.log_ratio + now.log_ratio_sd * random.normal();
    const double later_error = run_scatter * std::sqrt(2.0 / more);
    const double later_mean = truth + later_error * random.normal();
    const double before = 1 / (now.log_ratio_sd * now.log_ratio_sd);
    const double gained = 1 / (later_error * later_error);
    const double mean = (before * now.log_ratio + gained * later_mean) / (before + gained);
    const double sd = std::sqrt(1 / (before + gained));
    const bool apart = std::abs(mean) > 1.96 * sd;
    const bool same = std::abs(mean) + 1.645 * sd < std::log(now.worth_it_margin);
    settled += apart || same ? 1 : 0;
  }
  return static_cast<double>(settled) / trials;
}

TEST(FurtherRuns, HaveTheChanceThatSimulatedFurtherRunsHave) {
  for (const double log_ratio : {0.0, 0.2, 0.3}) {
    for (const int more : {2, 6, 12}) {
      const PresentKnowledge now = a_comparison(log_ratio);

      EXPECT_NEAR(chance_of_settling(now, more), simulated_chance(now, more, 0.25), 0.012)
          << log_ratio << " " << more;
    }
  }
}

// Two arms of log cuts with one unknown scatter, of which a half-normal prior of 0.5 (that of the
// engine) and the runs tell; the posterior on a grid of scatters.
class TwoArms {
 public:
  void add(double a, double b) {
    a_.push_back(a);
    b_.push_back(b);
  }

  [[nodiscard]] PresentKnowledge judged() const {
    const double runs = static_cast<double>(a_.size());
    const double mean_a = std::accumulate(a_.begin(), a_.end(), 0.0) / runs;
    const double mean_b = std::accumulate(b_.begin(), b_.end(), 0.0) / runs;
    double squares = 0;
    for (const double a : a_) squares += (a - mean_a) * (a - mean_a);
    for (const double b : b_) squares += (b - mean_b) * (b - mean_b);
    std::vector<double> scatters;
    std::vector<double> weights;
    double total = 0;
    double variance = 0;
    for (int hundredths = 1; hundredths < 250; ++hundredths) {
      const double scatter = hundredths / 100.0;
      const double weight =
          std::exp(-(2 * runs - 2) * std::log(scatter) - squares / (2 * scatter * scatter) -
                   scatter * scatter / (2 * 0.5 * 0.5));
      scatters.push_back(scatter * std::sqrt(2 / runs));
      weights.push_back(weight);
      total += weight;
      variance += weight * scatters.back() * scatters.back();
    }
    const auto half_width = [&](double beyond) {
      double low = 0;
      double high = 20;
      for (int step = 0; step < 40; ++step) {
        const double middle = (low + high) / 2;
        double tail = 0;
        for (std::size_t i = 0; i < weights.size(); ++i) {
          tail += weights[i] * std::erfc(middle / scatters[i] / std::numbers::sqrt2);
        }
        (tail / total > beyond ? low : high) = middle;
      }
      return high;
    };
    return {.log_ratio = mean_a - mean_b,
            .log_ratio_sd = std::sqrt(variance / total),
            .half_width_90 = half_width(0.10),
            .half_width_95 = half_width(0.05),
            .runs_a = static_cast<int>(a_.size()),
            .runs_b = static_cast<int>(b_.size()),
            .worth_it_margin = 1.5};
  }

 private:
  std::vector<double> a_;
  std::vector<double> b_;
};

bool is_settled(const PresentKnowledge& now) {
  const double distance = std::abs(now.log_ratio);
  return distance > now.half_width_95 ||
         distance + now.half_width_90 < std::log(now.worth_it_margin);
}

// Of trials with so many runs each that settle nothing and get a number, the share that so many
// further runs then settle.
double share_settled(int runs, int trials) {
  numerics::RandomStream random({32}, static_cast<std::uint64_t>(runs));
  int settled = 0;
  int promised = 0;
  while (promised < trials) {
    const double scatter = 0.5 * std::abs(random.normal());
    const double truth = 0.5 * random.normal();
    TwoArms arms;
    for (int r = 0; r < runs; ++r) {
      arms.add(truth + scatter * random.normal(), scatter * random.normal());
    }
    const PresentKnowledge now = arms.judged();
    if (is_settled(now)) continue;
    const auto further = further_runs_to_settle(now);
    if (!further) continue;
    ++promised;
    for (int r = 0; r < *further; ++r) {
      arms.add(truth + scatter * random.normal(), scatter * random.normal());
    }
    settled += is_settled(arms.judged()) ? 1 : 0;
  }
  return static_cast<double>(settled) / trials;
}

// 80 % are promised; of 300 trials a share of 0.8 has a standard error of 0.023.
TEST(FurtherRuns, SettleFourOfFiveAlsoWhereFewRunsTellOfTheScatter) {
  for (const int runs : {1, 2, 4}) {
    const double share = share_settled(runs, 300);

    EXPECT_GT(share, 0.73) << runs;
    EXPECT_LT(share, 0.90) << runs;
  }
}

TEST(FurtherRuns, AreTheFewestThatProbablySettleIt) {
  const PresentKnowledge now = a_comparison(0.2);
  const auto runs = further_runs_to_settle(now);

  ASSERT_TRUE(runs);
  EXPECT_GE(chance_of_settling(now, *runs), 0.8);
  if (*runs > 1) {
    EXPECT_LT(chance_of_settling(now, *runs - 1), 0.8);
  }
}

TEST(FurtherRuns, AreTooManyWhereTheMarginIsTooNarrow) {
  PresentKnowledge now = a_comparison(0.05);
  now.worth_it_margin = 1.05;

  EXPECT_EQ(further_runs_to_settle(now), std::nullopt);
}

TEST(FurtherRuns, NeedASpread) {
  PresentKnowledge now = a_comparison(0);
  now.log_ratio_sd = 0;

  EXPECT_THROW((void)chance_of_settling(now, 3), std::logic_error);
}

}  // namespace
}  // namespace keenfall::verdicts
