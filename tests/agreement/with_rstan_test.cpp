// The full engine's posterior of the plain model against NUTS in rstan, on 20 trials that no code
// of ours made and on the reference trial. Made by with_rstan.R; versions: README.md.
#include "numerics/chain_diagnostics.h"
#include "numerics/summaries.h"
#include "tests/agreement/answers.h"
#include "tests/agreement/plain_fit.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::agreement {
namespace {

constexpr double kRefused = 5;  // Monte-Carlo errors; some 1,600 numbers are compared

numerics::ChainDiagnostics worth_of(const blunting::Draws& draws, std::size_t chains) {
  std::vector<std::vector<double>> parts;
  const auto length = static_cast<std::ptrdiff_t>(draws.size() / chains);
  for (std::size_t c = 0; c < chains; ++c) {
    const auto first = draws.begin() + static_cast<std::ptrdiff_t>(c) * length;
    parts.push_back({first, first + length});
  }
  return numerics::diagnose(parts);
}

// How far our mean, sd and 95 % interval lie from rstan's, in Monte-Carlo errors of the difference.
std::vector<double> departures(const blunting::Draws& draws,
                               std::size_t chains,
                               const Answer& wanted) {
  const numerics::ChainDiagnostics worth = worth_of(draws, chains);
  const double sd = wanted.numbers.at("sd");
  const double bulk = sd * std::sqrt(1 / wanted.numbers.at("ess_bulk") + 1 / worth.ess_bulk);
  const double tail = sd * std::sqrt(1 / wanted.numbers.at("ess_tail") + 1 / worth.ess_tail);
  const numerics::Interval interval = numerics::interval_of(draws);
  return {
      (numerics::mean_of(draws) - wanted.numbers.at("mean")) / bulk,
      // An sd of n near-normal draws errs by about sd / sqrt(2 n); more with heavy tails.
      (std::sqrt(numerics::variance_of(draws)) - sd) / bulk,
      // The 2.5 % quantile of n normal draws errs by sqrt(0.025 * 0.975) / 0.0584 = 2.7 sd /
      // sqrt(n).
      (interval.lo95 - wanted.numbers.at("lo95")) / (2.7 * tail),
      (interval.hi95 - wanted.numbers.at("hi95")) / (2.7 * tail),
  };
}

class PlainModel : public testing::TestWithParam<std::string> {};

TEST_P(PlainModel, HasThePosteriorOfRstan) {
  const PlainFit plain = plain_fit_of(GetParam());
  const std::vector<Answer> answers = answers_about(GetParam(), answers_in("rstan.csv"));
  ASSERT_GE(answers.size(), 11U);  // two arms of three numbers, three scatters, two ratios
  EXPECT_TRUE(plain.fit.diagnostics.usable);

  double squares_of_means = 0;
  for (const Answer& wanted : answers) {
    const std::vector<double> z =
        departures(draws_named(plain, wanted.what), plain.fit.chains, wanted);
    for (const double departure : z) EXPECT_LT(std::abs(departure), kRefused) << wanted.what;
    squares_of_means += z[0] * z[0];
  }
  // A small bias everywhere would pass one by one: together the squares must look like chance
  // (their mean is 1; the parameters are correlated, so its spread is wide).
  EXPECT_LT(squares_of_means / static_cast<double>(answers.size()), 4);
}

INSTANTIATE_TEST_SUITE_P(Trials, PlainModel, testing::ValuesIn(trial_names()), [](const auto& one) {
  return one.param;
});

}  // namespace
}  // namespace keenfall::agreement
