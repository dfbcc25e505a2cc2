// Expected numbers by R 4.2.2's package survival 3.5-3, function survreg; data from its data sets
// cracks and turbine (Nelson 1982), tobin and ovarian, and an invented pass ladder.
#include "numerics/censored_fit.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <stdexcept>

namespace keenfall::numerics {
namespace {

using enum LocationScaleErrors;

constexpr double kDigits = 1e-6;       // relative, of coefficients, scale and likelihood
constexpr double kErrorDigits = 1e-5;  // of standard errors

#define EXPECT_CLOSE(found, expected, relative) \
  EXPECT_NEAR(found, expected, (relative)*std::abs(expected))

struct OfSurvreg {
  std::vector<double> coefficients;
  double scale;
  double log_likelihood;
  std::vector<double> standard_errors;
};

void expect_same(const CensoredFit& fit, const OfSurvreg& expected) {
  EXPECT_TRUE(fit.converged);
  ASSERT_EQ(fit.coefficients.size(), expected.coefficients.size());
  ASSERT_EQ(fit.standard_errors.size(), expected.standard_errors.size());
  for (std::size_t i = 0; i < fit.coefficients.size(); ++i) {
    EXPECT_CLOSE(fit.coefficients[i], expected.coefficients[i], kDigits);
  }
  EXPECT_CLOSE(fit.scale, expected.scale, kDigits);
  EXPECT_CLOSE(fit.log_likelihood, expected.log_likelihood, kDigits);
  for (std::size_t i = 0; i < fit.standard_errors.size(); ++i) {
    EXPECT_CLOSE(fit.standard_errors[i], expected.standard_errors[i], kErrorDigits);
  }
}

// Months between inspections at which cracks were found (Nelson 1982).
std::vector<CensoredNumber> cracks() {
  const std::array bounds{6.12, 19.92, 29.64, 35.4, 39.72, 45.24, 52.32, 63.48};
  const std::array counts{5.0, 16.0, 12.0, 18.0, 18.0, 2.0, 6.0, 17.0, 73.0};
  std::vector<CensoredNumber> numbers;
  for (std::size_t i = 0; i < counts.size(); ++i) {
    CensoredNumber number{.count = counts.at(i)};
    if (i > 0) number.after = std::log(bounds.at(i - 1));
    if (i < bounds.size()) number.by = std::log(bounds.at(i));
    numbers.push_back(number);
  }
  return numbers;
}

// Turbine wheels, each looked at once (Nelson 1982); hundreds of hours.
std::vector<CensoredNumber> turbine_wheels() {
  const std::array hours{4, 10, 14, 18, 22, 26, 30, 34, 38, 42, 46};
  const std::array inspected{39, 53, 33, 73, 30, 39, 42, 13, 34, 40, 36};
  const std::array failed{0, 4, 2, 7, 5, 9, 9, 6, 22, 21, 21};
  std::vector<CensoredNumber> numbers;
  for (std::size_t i = 0; i < hours.size(); ++i) {
    const double at = std::log(hours.at(i));
    if (failed.at(i) > 0) {
      numbers.push_back({.by = at, .count = static_cast<double>(failed.at(i))});
    }
    numbers.push_back({.after = at, .count = static_cast<double>(inspected.at(i) - failed.at(i))});
  }
  return numbers;
}

// An invented pass ladder: eight runs of each of two arms.
std::vector<CensoredNumber> ladder() {
  const std::array lasted{20, 10, 20, 10, 20, 50, 20, 20, 20, 10, 10, 10, 20, 20, 10, 10};
  std::vector<CensoredNumber> numbers;
  for (std::size_t i = 0; i < lasted.size(); ++i) {
    const int cuts = lasted.at(i);
    const int next = cuts == 10 ? 20 : (cuts == 20 ? 50 : 100);
    numbers.push_back(
        {.after = std::log(cuts), .by = std::log(next), .covariates = {1, i < 8 ? 0.0 : 1.0}});
  }
  return numbers;
}

TEST(CensoredFit, OfCracksFoundAtInspectionsIsThatOfSurvregForLogLogisticTimes) {
  expect_same(
      fit_censored(cracks(), logistic),
      {{4.01919659902}, 0.554822812324, -309.696412079, {0.0799592697915, 0.0958255822244}});
}

TEST(CensoredFit, OfCracksFoundAtInspectionsIsThatOfSurvregForLogNormalTimes) {
  expect_same(
      fit_censored(cracks(), normal),
      {{4.02685363327}, 0.998525122185, -311.914784437, {0.0899750008261, 0.0873083462643}});
}

TEST(CensoredFit, OfWheelsEachLookedAtOnceIsThatOfSurvregForLogLogisticTimes) {
  expect_same(fit_censored(turbine_wheels(), logistic),
              {{3.67970638448}, 0.393541151498, -189.728257019, {0.0617645907539, 0.129183205214}});
}

TEST(CensoredFit, OfWheelsEachLookedAtOnceIsThatOfSurvregForWeibullTimes) {
  expect_same(fit_censored(turbine_wheels(), smallest_extreme_value),
              {{3.84539655137}, 0.459605310202, -189.2871934, {0.0639365546997, 0.124469769087}});
}

TEST(CensoredFit, OfTwoArmsOnALadderIsThatOfSurvregForLogLogisticTimes) {
  expect_same(fit_censored(ladder(), logistic),
              {{3.30968348716, -0.396049489868},
               0.217561220683,
               -13.6158195764,
               {0.183792394979, 0.234947022284, 0.269280883631}});
}

TEST(CensoredFit, OfTwoArmsOnALadderIsThatOfSurvregForWeibullTimes) {
  expect_same(fit_censored(ladder(), smallest_extreme_value),
              {{3.6220402666, -0.593621304772},
               0.330570059938,
               -14.2088208698,
               {0.149225676317, 0.21848156066, 0.273352929944}});
}

// Durable goods: zeros are censored; printed coefficients 15.14486636, -0.12905928, -0.04554166.
TEST(CensoredFit, OfNumbersThatCannotShowBelowZeroIsThatOfSurvregForNormalOnes) {
  const std::array bought{0.0,  0.7, 0.0, 0.0, 0.0, 0.0, 0.0, 3.7, 0.0, 3.0,
                          10.4, 0.0, 0.0, 0.0, 1.5, 0.0, 0.0, 3.5, 6.1, 0.0};
  const std::array age{57.7, 50.9, 48.5, 41.7, 47.7, 59.8, 44.3, 45.1, 51.7, 50.0,
                       46.8, 58.0, 58.9, 40.0, 34.1, 39.9, 33.4, 48.1, 46.6, 53.1};
  const std::array quant{236.0, 283.0, 207.0, 220.0, 238.0, 216.0, 284.0, 221.0, 275.0, 269.0,
                         207.0, 249.0, 246.0, 277.0, 231.0, 219.0, 240.0, 266.0, 214.0, 251.0};
  std::vector<CensoredNumber> numbers;
  for (std::size_t i = 0; i < bought.size(); ++i) {
    CensoredNumber number{.by = bought.at(i), .covariates = {1, age.at(i), quant.at(i)}};
    if (bought.at(i) > 0) number.after = bought.at(i);
    numbers.push_back(number);
  }

  expect_same(fit_censored(numbers, normal),
              {{15.1448663322, -0.129059283865, -0.0455416628897},
               5.572539766,
               -28.9401331997,
               {16.0794532024, 0.218583596716, 0.0582541155076, 0.310322720188}});
}

// Printed coefficients 6.9618376, -0.4331347, 0.5815027. Survreg's likelihood is that of the times,
// which adds minus the log of every exact one.
TEST(CensoredFit, OfTimesWithCovariatesIsThatOfSurvregWhereTheScaleIsFixed) {
  const std::array time{59.,   115.,  156.,  421., 431., 448., 464., 475.,  477.,
                        563.,  638.,  744.,  769., 770., 803., 855., 1040., 1106.,
                        1129., 1206., 1227., 268., 329., 353., 365., 377.};
  const std::array died{1, 1, 1, 0, 1, 0, 1, 1, 0, 1, 1, 0, 0,
                        0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 0};
  const std::array state{1., 1., 2., 1., 1., 2., 2., 2., 1., 2., 2., 1., 2.,
                         1., 1., 2., 2., 1., 1., 1., 2., 2., 1., 2., 1., 1.};
  const std::array treated{1., 1., 1., 2., 1., 1., 2., 2., 1., 2., 1., 2., 2.,
                           2., 1., 1., 1., 1., 2., 2., 2., 1., 1., 2., 2., 2.};
  std::vector<CensoredNumber> numbers;
  double sum_of_exact = 0;
  for (std::size_t i = 0; i < time.size(); ++i) {
    CensoredNumber number{.after = std::log(time.at(i)),
                          .covariates = {1, state.at(i), treated.at(i)}};
    if (died.at(i) == 1) {
      number.by = number.after;
      sum_of_exact += number.after;
    }
    numbers.push_back(number);
  }

  expect_same(fit_censored(numbers, smallest_extreme_value, 1.0),
              {{6.96183761406, -0.433134655757, 0.581502727661},
               1,
               -97.1980392796 + sum_of_exact,
               {1.3218773704, 0.586993624741, 0.586993624741}});
}

TEST(CensoredFit, RefusesBoundsOutOfOrder) {
  const std::vector<CensoredNumber> numbers{{.after = 2, .by = 1}};

  EXPECT_THROW((void)fit_censored(numbers, logistic), std::logic_error);
}

}  // namespace
}  // namespace keenfall::numerics
