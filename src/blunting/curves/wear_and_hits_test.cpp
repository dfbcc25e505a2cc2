#include "blunting/curves/wear_and_hits.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <boost/math/tools/toms748_solve.hpp>

#include <cmath>
#include <cstdint>
#include <optional>
#include <stdexcept>

namespace keenfall::blunting {
namespace {

// Checks are closed forms of the curve itself, and Boost.Math's root finder.

TEST(WearAndHits, WearAloneDoublesTheReadingInThreeWearScales) {
  const WearAndHits wear{.wear_scale_cuts = 16};

  EXPECT_DOUBLE_EQ(bluntness(wear, 0), 1);
  EXPECT_DOUBLE_EQ(bluntness(wear, 16), std::sqrt(2.0));
  EXPECT_NEAR(cuts_to_level(wear, 2).value(), 48, 1e-9);
  EXPECT_NEAR(cuts_to_level(wear, 4).value(), 16 * 15, 1e-9);
}

TEST(WearAndHits, HitsAloneThatSaturateReachWhatTheirSumAllows) {
  const WearAndHits hits{.hit_slope_per_cut = 0.2, .hit_saturation_per_cut = 0.1};

  EXPECT_NEAR(cuts_to_level(hits, 2).value(), std::log(2.0) / 0.1, 1e-9);
  EXPECT_EQ(cuts_to_level(hits, 3), std::nullopt);  // 1 + S / c = 3 is never reached
  EXPECT_EQ(cuts_to_level({}, 2), std::nullopt);
}

TEST(WearAndHits, RisesFirstByTheSumOfBothSlopes) {
  const WearAndHits both{
      .wear_scale_cuts = 50, .hit_slope_per_cut = 0.03, .hit_saturation_per_cut = 0.002};

  EXPECT_DOUBLE_EQ(bluntness_slope(both, 0), 1 / 100.0 + 0.03);
  EXPECT_NEAR((bluntness(both, 1e-6) - 1) / 1e-6, bluntness_slope(both, 0), 1e-8);
}

TEST(WearAndHits, WithNextToNoSaturationIsTheStraightLine) {
  const WearAndHits straight{.wear_scale_cuts = 50, .hit_slope_per_cut = 0.03};
  WearAndHits nearly = straight;
  nearly.hit_saturation_per_cut = 1e-12;

  EXPECT_NEAR(bluntness(nearly, 400), bluntness(straight, 400), 1e-8);
}

TEST(WearAndHits, ReachesALevelWhereBoostFindsTheRoot) {
  rc::check([] {
    const auto between = [](double low, double high) {
      const double share = *rc::gen::inRange(0, 1000001) / 1e6;
      return low * std::pow(high / low, share);
    };
    const WearAndHits curve{.wear_scale_cuts = between(0.1, 1e4),
                            .hit_slope_per_cut = between(1e-5, 10),
                            .hit_saturation_per_cut = between(1e-6, 1)};
    const double level = between(1.01, 50);

    const double found = cuts_to_level(curve, level).value();

    std::uintmax_t most_steps = 500;
    const auto [below, above] = boost::math::tools::toms748_solve(
        [&](double cuts) { return bluntness(curve, cuts) - level; },
        0.0,
        *curve.wear_scale_cuts * (level * level - 1) * 1.001,
        [](double low, double high) { return high - low <= 1e-13 * high; },
        most_steps);
    RC_ASSERT(std::abs(found / ((below + above) / 2) - 1) < 1e-9);
  });
}

TEST(WearAndHits, ChangesWithTheUnitOfLengthAsCutsDo) {
  const WearAndHits per_cut{
      .wear_scale_cuts = 50, .hit_slope_per_cut = 0.03, .hit_saturation_per_cut = 0.002};
  const WearAndHits per_tenth{
      .wear_scale_cuts = 500, .hit_slope_per_cut = 0.003, .hit_saturation_per_cut = 0.0002};

  EXPECT_NEAR(cuts_to_level(per_tenth, 3).value(), 10 * cuts_to_level(per_cut, 3).value(), 1e-9);
}

TEST(WearAndHits, RefusesWhatIsNoCurve) {
  EXPECT_THROW((void)bluntness({.wear_scale_cuts = 0}, 1), std::logic_error);
  EXPECT_THROW((void)bluntness({.hit_slope_per_cut = -1}, 1), std::logic_error);
  EXPECT_THROW((void)bluntness({.wear_scale_cuts = 1}, -1), std::logic_error);
  EXPECT_THROW((void)cuts_to_level({.wear_scale_cuts = 1}, 1), std::logic_error);
}

}  // namespace
}  // namespace keenfall::blunting
