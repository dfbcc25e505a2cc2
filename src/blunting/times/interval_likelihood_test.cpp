// Expected numbers by R 4's plogis and dlogis (base package stats).
#include "blunting/times/interval_likelihood.h"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>
#include <vector>

namespace keenfall::blunting {
namespace {

constexpr double kOpen = std::numeric_limits<double>::infinity();

double log_likelihood(const LogTimeBounds& bounds) {
  return likelihood_of_bounds(bounds, 3, 0.4).log_likelihood;
}

// R: location 3, scale 0.4; log(plogis(z(log 50)) - plogis(z(log 40)))
TEST(IntervalLikelihood, OfATimeBetweenFortyAndFiftyCutsIsWhatRSays) {
  EXPECT_NEAR(log_likelihood({std::log(40), std::log(50)}), -2.833612222332114, 1e-12);
}

// R: plogis(z(log 40), lower.tail = FALSE, log.p = TRUE)
TEST(IntervalLikelihood, OfAnEdgeNeverSeenToFailIsItsShareAbove) {
  EXPECT_NEAR(log_likelihood({std::log(40), kOpen}), -1.886587762231725, 1e-12);
}

// R: plogis(z(log 50), log.p = TRUE)
TEST(IntervalLikelihood, OfAnEdgeThatFailedAtTheFirstTryIsItsShareBelow) {
  EXPECT_NEAR(log_likelihood({-kOpen, std::log(50)}), -0.09737924159600567, 1e-12);
}

// R: dlogis(log(40), 3, 0.4, log = TRUE)
TEST(IntervalLikelihood, OfAnExactTimeIsTheDensityOfItsLog) {
  EXPECT_NEAR(log_likelihood({std::log(40), std::log(40)}), -1.134686157304455, 1e-12);
}

// R: log(plogis(z(60), lower.tail = FALSE) - plogis(z(61), lower.tail = FALSE)); F(b) - F(a) is 0.
TEST(IntervalLikelihood, KeepsItsDigitsWhereTheDistributionFunctionIsOne) {
  EXPECT_NEAR(log_likelihood({60, 61}), -142.585650483742, 1e-9);
}

TEST(IntervalLikelihood, OfANarrowIntervalIsItsWidthTimesTheDensity) {
  const double at = std::log(40);
  const double width = 1e-9;

  const double narrow = log_likelihood({at, at + width});

  EXPECT_NEAR(narrow, log_likelihood({at, at}) + std::log(width), 1e-6);
}

TEST(IntervalLikelihood, HasTheSlopesOfItsOwnValue) {
  const std::vector<LogTimeBounds> all{
      {3.6, 3.9}, {3.6, kOpen}, {-kOpen, 3.9}, {3.6, 3.6}, {20, 21}, {-20, -19.5}, {-20, 30}};
  const double h = 1e-5;
  for (const LogTimeBounds& bounds : all) {
    const TimeLikelihood here = likelihood_of_bounds(bounds, 3, 0.4);
    const auto at = [&](double location, double log_factor) {
      return likelihood_of_bounds(bounds, location, 0.4 * std::exp(log_factor)).log_likelihood;
    };

    EXPECT_NEAR(here.by_location, (at(3 + h, 0) - at(3 - h, 0)) / (2 * h), 1e-6);
    EXPECT_NEAR(here.by_log_scale, (at(3, h) - at(3, -h)) / (2 * h), 1e-6);
    const auto slope = [&](double location) {
      return likelihood_of_bounds(bounds, location, 0.4).by_location;
    };
    EXPECT_NEAR(here.by_location_twice, (slope(3 + h) - slope(3 - h)) / (2 * h), 1e-6);
  }
}

TEST(IntervalLikelihood, OfNothingKnownIsOne) { EXPECT_EQ(log_likelihood({-kOpen, kOpen}), 0); }

TEST(IntervalLikelihood, RefusesBoundsOutOfOrder) {
  EXPECT_THROW((void)log_likelihood({4, 3}), std::logic_error);
}

}  // namespace
}  // namespace keenfall::blunting
