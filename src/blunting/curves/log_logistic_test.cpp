#include "blunting/curves/log_logistic.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <stdexcept>

namespace keenfall::blunting {
namespace {

TEST(BluntingCurve, DoublesTheReadingAtHalfKeennessWhateverTheShape) {
  for (const double shape : {0.3, 0.8, 1.7}) {
    const LogLogistic curve{std::log(104), std::log(34), shape};

    EXPECT_NEAR(log_bluntness(curve, std::log(34)), std::log(208), 1e-12);
    EXPECT_NEAR(log_cuts_to_level(curve, 2), std::log(34), 1e-12);
  }
}

TEST(BluntingCurve, StartsAtTheStartReading) {
  EXPECT_DOUBLE_EQ(log_bluntness({std::log(104), 3, 0.6}, -HUGE_VAL), std::log(104));
}

// Keenness S = 1 / (1 + a x^b) with b = 0.5: a = 0.20 is half gone at 25 cuts, a = 0.15 at 44.44,
// and the ratio (0.20 / 0.15)^(1 / b) = 1.7778 holds at every level (closed form).
TEST(BluntingCurve, KeepsOneRatioAtEveryLevelWhenShapesAreEqual) {
  const LogLogistic first{0, -std::log(0.20) / 0.5, 0.5};
  const LogLogistic second{0, -std::log(0.15) / 0.5, 0.5};

  EXPECT_NEAR(std::exp(first.log_half_keenness), 25, 1e-9);
  EXPECT_NEAR(std::exp(second.log_half_keenness), 44.4444, 1e-4);
  for (const double level : {1.2, 2.0, 4.0}) {
    EXPECT_NEAR(std::exp(log_cuts_to_level(second, level) - log_cuts_to_level(first, level)),
                16.0 / 9.0,
                1e-12);
  }
}

TEST(BluntingCurve, IsAlreadyThereWhenTheStartIsBlunterThanTheReadingAskedFor) {
  EXPECT_EQ(log_cuts_to_reading({std::log(200), 3, 0.6}, std::log(150)), -HUGE_VAL);
}

TEST(BluntingCurve, RefusesALevelAtTheStart) {
  EXPECT_THROW((void)log_cuts_to_level({}, 1), std::logic_error);
}

RC_GTEST_PROP(BluntingCurve, CutsToAReadingInvertsTheReadingAtThoseCuts, ()) {
  const LogLogistic curve{*rc::gen::inRange(-50, 50) / 10.0,
                          *rc::gen::inRange(-20, 80) / 10.0,
                          *rc::gen::inRange(20, 200) / 100.0};
  const double log_cuts = *rc::gen::inRange(-10, 90) / 10.0;
  const double log_reading = log_bluntness(curve, log_cuts);
  RC_PRE(log_reading - curve.log_start > 1e-3);

  RC_ASSERT(std::abs(log_cuts_to_reading(curve, log_reading) - log_cuts) < 1e-8);
}

}  // namespace
}  // namespace keenfall::blunting
