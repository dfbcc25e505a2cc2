#include "verdicts/media_compared.h"

#include "numerics/summaries.h"
#include "verdicts/made_fit.h"
#include "verdicts/spread.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace keenfall::verdicts {
namespace {

using testing::made_fit;
using testing::MadeArm;
using testing::MadeFit;

MadeArm arm(const std::string& blade, const std::string& medium, double cuts, double error = 0.05) {
  return {.arm = {.blade = blade, .medium = {.name = medium}},
          .log_half_keenness = std::log(cuts),
          .error = error};
}

// Half keenness 34, 48, 108 cuts on new and 8.4, 8.8, 9.2 on uplifted matting (invented).
MadeFit three_blades() {
  return made_fit({arm("A", "new", 34),
                   arm("A", "uplifted", 8.4),
                   arm("B", "new", 48),
                   arm("B", "uplifted", 8.8),
                   arm("C", "new", 108),
                   arm("C", "uplifted", 9.2)},
                  1);
}

AcrossMedia compared(const MadeFit& made) {
  return *compare_media(arms_lasting(made.data, made.fit, {}), 1.5, {1});
}

TEST(MediaCompared, GivesTheRatioOfRatiosOfEachPairOfBlades) {
  const AcrossMedia across = compared(three_blades());

  ASSERT_EQ(across.interactions.size(), 3U);
  const MediaInteraction& c_against_a = across.interactions[1];
  EXPECT_EQ(c_against_a.a, 2U);
  EXPECT_EQ(c_against_a.b, 0U);
  // Closed form: (108 / 34) / (9.2 / 8.4); the errors of four arms add, 0.1 in logs.
  const double truth = (108.0 / 34) / (9.2 / 8.4);
  EXPECT_NEAR(c_against_a.ratio.median, truth, 0.02 * truth);
  EXPECT_NEAR(std::log(c_against_a.ratio.hi95 / c_against_a.ratio.lo95), 2 * 1.96 * 0.1, 0.02);
  EXPECT_LT(c_against_a.simultaneous.lo95, c_against_a.ratio.lo95);
  EXPECT_EQ(dependence_in_words(c_against_a.verdict), "depends on the medium, by enough to matter");
}

TEST(MediaCompared, FindsTheSpreadOfTheBladesAndThatItCloses) {
  const AcrossMedia across = compared(three_blades());

  // Standard deviations of the logs of 34, 48, 108 and of 8.4, 8.8, 9.2, by R's sd().
  EXPECT_NEAR(across.media[0].spread.median, 0.5966, 0.04);
  EXPECT_LT(across.media[1].spread.lo95, 0.0455);
  EXPECT_GT(across.media[1].spread.hi95, 0.0455);
  EXPECT_LT(across.pairs[0].spread_ratio.hi95, 0.5);
}

TEST(MediaCompared, SaysHowFarLastingItselfFalls) {
  // Closed form: the ratio of geometric means.
  EXPECT_NEAR(compared(three_blades()).pairs[0].lasting_ratio.median,
              std::cbrt(8.4 * 8.8 * 9.2 / (34.0 * 48 * 108)),
              0.01);
}

TEST(MediaCompared, IsSureOfAnOrderThatIsFarApartAndNotOfOneThatIsNot) {
  const AcrossMedia across = compared(three_blades());

  EXPECT_EQ(across.media[0].order, (std::vector<std::size_t>{2, 1, 0}));
  EXPECT_GT(across.media[0].order_probability, 0.99);
  EXPECT_LT(across.media[1].order_probability, 0.75);
  EXPECT_NEAR(across.pairs[0].probability_same_order, across.media[1].order_probability, 0.02);
  EXPECT_GT(across.pairs[0].probability_same_longest, across.pairs[0].probability_same_order);
}

// Two media that put three blades in one order: 1 of 6 orders does as well (Kendall's W = 1).
TEST(MediaCompared, SaysThatOneOrderOfThreeBladesIsNoProofOfAgreement) {
  const AcrossMedia across = compared(three_blades());

  EXPECT_DOUBLE_EQ(across.agreement.kendall_w, 1);
  EXPECT_DOUBLE_EQ(across.agreement.p, 1.0 / 6);
}

TEST(MediaCompared, LeavesOutABladeThatWasNotCutInAllMediaAndNamesIt) {
  const AcrossMedia across = compared(made_fit({arm("A", "new", 34),
                                                arm("A", "uplifted", 8),
                                                arm("B", "new", 50),
                                                arm("B", "uplifted", 9),
                                                arm("C", "new", 80)},
                                               2));

  EXPECT_EQ(across.arms_left_out, (std::vector<std::size_t>{4}));
  EXPECT_EQ(across.interactions.size(), 1U);
}

TEST(MediaCompared, HasNothingToSayOfBladesCutInOneMediumOrInDifferentOnes) {
  const MadeFit one = made_fit({arm("A", "new", 34), arm("B", "new", 50)}, 3);
  const MadeFit apart = made_fit({arm("A", "new", 34), arm("B", "uplifted", 50)}, 3);

  EXPECT_FALSE(compare_media(arms_lasting(one.data, one.fit, {}), 1.5, {1}));
  EXPECT_FALSE(compare_media(arms_lasting(apart.data, apart.fit, {}), 1.5, {1}));
}

TEST(MediaCompared, HoldsNoInteractionsOfFiftyBladesInFourMediaButTheirSpreads) {
  std::vector<MadeArm> arms;
  for (int blade = 0; blade < 50; ++blade) {
    for (const char* medium : {"rope", "card", "felt", "hide"}) {
      arms.push_back(arm(std::to_string(blade), medium, std::exp(3 + 0.02 * blade), 0.15));
    }
  }
  const AcrossMedia across = compared(made_fit(arms, 4));

  EXPECT_TRUE(across.interactions.empty());
  EXPECT_EQ(across.remarks.size(), 1U);
  EXPECT_EQ(across.pairs.size(), 6U);
  // sd of 0.02 x 0..49 is 0.2915; draws each with an error of 0.15 would spread by 0.33.
  EXPECT_NEAR(across.media[0].spread.median, 0.2915, 0.07);
}

TEST(MediaCompared, TakesTheBluntestReadingWhereMediaWereComparedAtDifferentOnes) {
  const MadeFit made = three_blades();
  const ArmsLasting where =
      arms_lasting(made.data,
                   made.fit,
                   {{.at = {.what = ComparedAt::common_reading, .reading = 300}},
                    {.at = {.what = ComparedAt::half_keenness}},
                    {.at = {.what = ComparedAt::common_reading, .reading = 400}}});

  EXPECT_EQ(where.at, (At{.what = ComparedAt::common_reading, .reading = 400}));
  EXPECT_EQ(where.remarks.size(), 1U);
}

// Simulate and recover: blades about a middle with a known spread, seen with a known error.
TEST(Spread, OfBladesIsCoveredByItsInterval) {
  numerics::RandomStream random({5}, 0);
  int trials_run = 0;
  int covered = 0;
  for (const double truth : {0.1, 0.3, 0.6}) {
    for (int trial = 0; trial < 100; ++trial, ++trials_run) {
      constexpr std::size_t kBlades = 4;
      std::vector<double> blades;
      std::vector<blunting::Draws> seen;
      for (std::size_t i = 0; i < kBlades; ++i) {
        blades.push_back(3 + truth * random.normal());
        const double centre = blades.back() + 0.1 * random.normal();
        blunting::Draws draws;
        for (int d = 0; d < 500; ++d) draws.push_back(centre + 0.1 * random.normal());
        seen.push_back(std::move(draws));
      }
      const double spread = std::sqrt(numerics::variance_of(blades));
      const numerics::Interval found = numerics::interval_of(draws_of_spread(seen, 1000, random));
      if (found.lo95 <= spread && spread <= found.hi95) ++covered;
    }
  }

  const double n = trials_run;
  EXPECT_GE(covered / n, 0.95 - 2.6 * std::sqrt(0.95 * 0.05 / n));
}

TEST(Spread, OfOneBladeOrOfASingleDrawIsMisuse) {
  numerics::RandomStream random({5}, 0);
  const std::vector<blunting::Draws> one_blade{{3, 3.1, 2.9}};
  const std::vector<blunting::Draws> single_draws{{3}, {3.1}};

  EXPECT_THROW((void)draws_of_spread(one_blade, 10, random), std::logic_error);
  EXPECT_THROW((void)draws_of_spread(single_draws, 10, random), std::logic_error);
}

}  // namespace
}  // namespace keenfall::verdicts
