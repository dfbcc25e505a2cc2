#include "planning/checkpoints.h"

#include "blunting/simulated_run.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

namespace keenfall::planning {
namespace {

using blunting::LogLogistic;

std::vector<double> laid_out(const CheckpointNeeds& needs) { return *fewest_checkpoints(needs); }

auto above(const std::vector<double>& cuts, double half) {
  return std::ranges::count_if(cuts, [half](double c) { return c > half; });
}

auto below(const std::vector<double>& cuts, double half) {
  return std::ranges::count_if(cuts, [half](double c) { return c < half; });
}

// Common practice, no source.
TEST(DoublingCheckpoints, AreDoublesAndOne) {
  EXPECT_EQ(doubling_checkpoints(), (std::vector<double>{0, 1, 3, 7, 15, 31, 63, 127, 255}));
}

TEST(DoublingCheckpoints, EndAtOrBeyondTheLastCutsAskedFor) {
  EXPECT_EQ(doubling_checkpoints(20), (std::vector<double>{0, 1, 3, 7, 15, 31}));
  EXPECT_EQ(doubling_checkpoints(31), (std::vector<double>{0, 1, 3, 7, 15, 31}));
  EXPECT_EQ(doubling_checkpoints(0), (std::vector<double>{0, 1}));
}

TEST(DoublingCheckpoints, EndSomewhere) {
  EXPECT_THROW((void)doubling_checkpoints(INFINITY), std::logic_error);
}

// Common practice, no source.
TEST(GrittyCheckpoints, AreDenser) {
  EXPECT_EQ(gritty_checkpoints(), (std::vector<double>{0, 1, 2, 4, 6, 9, 13, 19, 28}));
}

TEST(FewestCheckpoints, HaveTwoEitherSideOfHalfKeennessWhereverItIsExpected) {
  rc::check([] {
    const double half = std::exp(0.01 * *rc::gen::inRange(200, 900));  // 7 to 8,000 cuts
    const double either_way = 1 + 0.1 * *rc::gen::inRange(0, 30);
    RC_PRE(half / either_way > 3);
    const auto cuts = laid_out({.half_keenness_cuts = half, .either_way = either_way});

    for (const double lasting : {1 / either_way, 1.0, either_way}) {
      RC_ASSERT(above(cuts, half * lasting) >= 2);
      RC_ASSERT(below(cuts, half * lasting) >= 2);
    }
  });
}

TEST(FewestCheckpoints, RiseFromZeroInWholeCuts) {
  rc::check([] {
    const double half = std::exp(0.01 * *rc::gen::inRange(-100, 900));
    const auto cuts = laid_out({.half_keenness_cuts = half});

    RC_ASSERT(cuts.front() == 0);
    RC_ASSERT(std::ranges::adjacent_find(cuts, std::ranges::greater_equal{}) == cuts.end());
    for (const double c : cuts) RC_ASSERT(c == std::round(c));
  });
}

// The worked number of docs/methods/planning.md.
TEST(FewestCheckpoints, AroundFortyCutsGrowByTwo) {
  EXPECT_EQ(laid_out({.half_keenness_cuts = 40, .either_way = 2}),
            (std::vector<double>{0, 7, 14, 28, 57, 113, 226}));
}

TEST(FewestCheckpoints, CostFewerReadingsThanDoublesAndOneForTheSameReach) {
  const auto cuts = laid_out({.half_keenness_cuts = 40});

  EXPECT_LT(cuts.size(), doubling_checkpoints(cuts.back()).size());
}

TEST(FewestCheckpoints, AreMoreWhereReadingsScatterMore) {
  const CheckpointNeeds exact{.reading = {.reading_log_sd = 0.03, .spot_log_sd = 0.01}};
  const CheckpointNeeds coarse{.reading = {.reading_log_sd = 0.30, .spot_log_sd = 0.06}};

  EXPECT_LT(laid_out(exact).size(), laid_out(coarse).size());
}

TEST(FewestCheckpoints, AreFewerWhereRunsScatterMore) {
  EXPECT_LT(laid_out({.run_log_sd = 0.40}).size(), laid_out({.run_log_sd = 0.12}).size());
}

TEST(FewestCheckpoints, LetReadingMakeRunsScatterNoMoreThanFifteenPercentMore) {
  const CheckpointNeeds needs{};
  const auto cuts = laid_out(needs);

  for (const double lasting : {0.5, 1.0, 2.0}) {
    const double error = half_keenness_error(
        cuts,
        needs.reading,
        {.log_half_keenness = std::log(needs.half_keenness_cuts * lasting), .shape = needs.shape});
    EXPECT_LE(std::hypot(error, needs.run_log_sd), 1.1505 * needs.run_log_sd);
  }
}

// Where the edge is four times as blunt: tau * 3^(1/p), here 40 * 9 = 360.
TEST(FewestCheckpoints, GoOnToTheStopLevel) {
  EXPECT_GE(laid_out({.half_keenness_cuts = 40, .shape = 0.5, .stop_level = 4}).back(), 360);
}

TEST(FewestCheckpoints, OfAnEdgeThatFadesAtOnceAreTheFirstCuts) {
  const auto cuts = laid_out({.half_keenness_cuts = 1.5});

  EXPECT_EQ(cuts[0], 0);
  EXPECT_EQ(cuts[1], 1);
  EXPECT_EQ(cuts[2], 2);
}

TEST(FewestCheckpoints, OfALengthNeedNotBeWhole) {
  const auto metres = laid_out({.half_keenness_cuts = 0.4, .whole_cuts = false});

  EXPECT_GE(below(metres, 0.2), 2);
  EXPECT_GE(above(metres, 0.8), 2);
}

TEST(FewestCheckpoints, RefuseAHalfKeennessThatIsNone) {
  const auto cuts = fewest_checkpoints({.half_keenness_cuts = 0});

  ASSERT_FALSE(cuts);
  EXPECT_EQ(cuts.error().sentence, "Checkpoints cannot be laid around a half keenness of 0.");
  EXPECT_EQ(cuts.error().place.column, "half_keenness_cuts");
  EXPECT_FALSE(fewest_checkpoints({.half_keenness_cuts = NAN}));
}

TEST(FewestCheckpoints, RefuseWhatCannotBe) {
  EXPECT_EQ(fewest_checkpoints({.either_way = 0.5}).error().place.column, "either_way");
  EXPECT_EQ(fewest_checkpoints({.stop_level = 1}).error().place.column, "stop_level");
  EXPECT_EQ(fewest_checkpoints({.shape = 3}).error().place.column, "shape");
}

// Repeats lessen the error of readings by their root and that of the spot not at all: with no error
// of spots and a shape that the readings settle by themselves, four times the readings halve it.
TEST(HalfKeennessError, FallsWithTheRootOfTheReadings) {
  const std::vector<double> cuts = doubling_checkpoints(4095);
  const LogLogistic curve{.log_half_keenness = std::log(60), .shape = 0.8};
  const double once = half_keenness_error(cuts, {1, 0.01, 0}, curve);
  const double four_times = half_keenness_error(cuts, {4, 0.01, 0}, curve);

  EXPECT_NEAR(four_times / once, 0.5, 0.005);
}

// Simulate and recover: start and half keenness fitted to readings at two checkpoints where the
// shape is known to be 1, so that half keenness is x / (reading / start - 1) in closed form. At
// x = tau its error is sqrt(2) * 2 * sigma; the prior of the shape does not enter, since the
// slope by the shape, log(x / tau), is 0 there.
TEST(HalfKeennessError, IsThatOfAStartAndOneReadingInClosedForm) {
  constexpr double kSigma = 0.02;
  const LogLogistic curve{.log_half_keenness = std::log(50), .shape = 1};
  const double error = half_keenness_error(std::vector<double>{0, 50}, {1, kSigma, 0}, curve);

  EXPECT_NEAR(error, 2 * std::sqrt(2.0) * kSigma, 1e-12);
}

TEST(HalfKeennessError, IsBoundlessWithoutReadingsAfterTheStart) {
  EXPECT_EQ(half_keenness_error(std::vector<double>{0}, {}, {}), HUGE_VAL);
  EXPECT_EQ(half_keenness_error({}, {}, {}), HUGE_VAL);
}

TEST(HalfKeennessError, NeedsAReading) {
  EXPECT_THROW((void)half_keenness_error(std::vector<double>{0, 1}, {.repeats = 0}, {}),
               std::logic_error);
}

TEST(GrowingSteps, HaveAReason) {
  EXPECT_NE(why_growing_steps().find("loses most at first"), std::string_view::npos);
}

}  // namespace
}  // namespace keenfall::planning
