// The plain model's posterior against maximum likelihood by nlme and TMB, which are other answers
// to the same question: no priors, and scatters at one best point. So they agree within a part of
// their own uncertainty only, and our intervals are the wider ones. Made by with_nlme.R and
// with_tmb.R; versions: README.md.
#include "numerics/summaries.h"
#include "tests/agreement/answers.h"
#include "tests/agreement/plain_fit.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace keenfall::agreement {
namespace {

struct Ours {
  double mean = 0;
  double sd = 0;
};

// Every log half keenness of every trial, by trial and name.
const std::map<std::string, Ours>& ours() {
  static const std::map<std::string, Ours> found = [] {
    std::map<std::string, Ours> all;
    for (const std::string& trial : trial_names()) {
      const PlainFit plain = plain_fit_of(trial);
      for (std::size_t a = 0; a < plain.data.arms.size(); ++a) {
        const std::string name = "mu[" + std::to_string(a + 1) + "]";
        const blunting::Draws draws = draws_named(plain, name);
        all[trial + name] = {numerics::mean_of(draws), std::sqrt(numerics::variance_of(draws))};
      }
    }
    return all;
  }();
  return found;
}

struct Departures {
  std::size_t compared = 0;
  double largest = 0;         // of the means, in our sds
  double mean_square = 0;     // the same
  double mean_log_ratio = 0;  // of our sd over their standard error
};

Departures departures(const std::string& file, double priors) {
  Departures found;
  for (const Answer& answer : answers_in(file)) {
    if (!answer.what.starts_with("mu[")) continue;
    if (answer.numbers.contains("priors") && answer.numbers.at("priors") != priors) continue;
    const Ours& mine = ours().at(answer.trial + answer.what);
    const double z = (answer.numbers.at("estimate") - mine.mean) / mine.sd;
    found.largest = std::max(found.largest, std::abs(z));
    found.mean_square += z * z;
    found.mean_log_ratio += std::log(mine.sd / answer.numbers.at("standard_error"));
    ++found.compared;
  }
  found.mean_square /= static_cast<double>(found.compared);
  found.mean_log_ratio /= static_cast<double>(found.compared);
  return found;
}

// The bars are what was found, doubled: 0.19, 0.15 and 0.06 of our sd at most; 0.07, 0.05 and 0.02
// on average; sds 1.22 to 1.24 times the standard errors, since an estimated scatter of three to
// eight runs is itself uncertain.
void expect_near(const Departures& found, double largest, double root_mean_square) {
  EXPECT_EQ(found.compared, 62U);
  EXPECT_LT(found.largest, largest);
  EXPECT_LT(std::sqrt(found.mean_square), root_mean_square);
  EXPECT_GT(std::exp(found.mean_log_ratio), 1.1);
  EXPECT_LT(std::exp(found.mean_log_ratio), 1.4);
}

TEST(HalfKeenness, AgreesWithNlme) { expect_near(departures("nlme.csv", 0), 0.4, 0.14); }

TEST(HalfKeenness, AgreesWithTmbWithoutPriors) { expect_near(departures("tmb.csv", 0), 0.3, 0.1); }

TEST(HalfKeenness, AgreesWithTmbWithTheSamePriors) {
  expect_near(departures("tmb.csv", 1), 0.12, 0.04);
}

}  // namespace
}  // namespace keenfall::agreement
