#include "numerics/two_samples.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <stdexcept>

namespace keenfall::numerics {
namespace {

// Student's sleep data (Cushny & Peebles; R's data set `sleep`), answers by R 4.2.2.
constexpr std::array kFirst{0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
constexpr std::array kSecond{1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};

void expect_close(double found, double wanted, double relative) {
  EXPECT_NEAR(found, wanted, relative * std::abs(wanted));
}

TEST(Welch, AgreesWithRTTestOnStudentsSleepData) {
  const WelchTest test = welch_test(kFirst, kSecond);

  expect_close(test.t, -1.86081346749, 1e-9);
  expect_close(test.degrees_of_freedom, 17.7764735162, 1e-9);
  expect_close(test.p_two_sided, 0.0793941401874, 1e-9);
  expect_close(test.lo95, -3.36548323071, 1e-9);
  expect_close(test.hi95, 0.205483230712, 1e-9);
}

TEST(Equivalence, AgreesWithTwoOneSidedRTTestsOnStudentsSleepData) {
  const WelchTest welch = welch_test(kFirst, kSecond);
  const EquivalenceTest test = equivalence_test(welch, 0.5);

  expect_close(welch.standard_error, 0.849091017239, 1e-9);
  expect_close(welch.lo90, -3.05338149733, 1e-9);
  expect_close(welch.hi90, -0.106618502668, 1e-9);
  expect_close(test.t_lower, -1.27194844613, 1e-9);
  expect_close(test.p_lower, 0.890109961251, 1e-9);
  expect_close(test.t_upper, -2.44967848884, 1e-9);
  expect_close(test.p_upper, 0.0124513277177, 1e-9);
  expect_close(test.p, 0.890109961251, 1e-9);
}

// The examples of R's help page ?power.t.test; the last digits by R 4.2.2.
TEST(Power, AgreesWithThePowerTTestHelpPage) {
  expect_close(power_of({.per_group = 20, .difference = 1}), 0.868952801692, 1e-9);
  expect_close(per_group_for({.difference = 1}, 0.90), 22.0210977039, 1e-6);
  // One-sided at 5 %: the same tail as two-sided at 10 %.
  expect_close(per_group_for({.difference = 1, .level = 0.10}, 0.90), 17.8471260865, 1e-6);
}

// A grid over runs per arm and true ratios 1.25, 1.5, 2 and 4 at run scatter 0.25, by R 4.2.2.
TEST(Power, AgreesWithRForRatiosOfLastingAtScatterAQuarter) {
  struct Point {
    double runs;
    double ratio;
    double one_tail;
    double both_tails;
  };
  constexpr std::array kGrid{Point{3, 1.25, 0.134296374428, 0.136498491065},
                             Point{6, 1.25, 0.287558733998, 0.287930713097},
                             Point{20, 1.25, 0.785421079083, 0.785422293976},
                             Point{3, 1.5, 0.332137974321, 0.332299176942},
                             Point{10, 1.5, 0.928845981898, 0.92884601321},
                             Point{4, 2, 0.901180066605, 0.901180096419},
                             Point{5, 4, 0.999999984445, 0.999999984445}};
  for (const Point& point : kGrid) {
    TwoSampleDesign design{
        .per_group = point.runs, .difference = std::log(point.ratio), .sd = 0.25};
    expect_close(power_of(design), point.one_tail, 1e-6);
    design.both_tails = true;
    expect_close(power_of(design), point.both_tails, 1e-6);
  }
}

TEST(Welch, RefusesGroupsThatCannotBeCompared) {
  EXPECT_THROW((void)welch_test(std::array{1.0}, kSecond), std::logic_error);
  EXPECT_THROW((void)welch_test(std::array{1.0, 1.0}, std::array{2.0, 2.0}), std::logic_error);
}

}  // namespace
}  // namespace keenfall::numerics
