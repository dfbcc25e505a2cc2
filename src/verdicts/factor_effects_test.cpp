#include "verdicts/factor_effects.h"

#include "verdicts/made_fit.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

namespace keenfall::verdicts {
namespace {

using testing::made_fit;
using testing::MadeArm;
using testing::MadeFit;

struct Cell {
  std::string blade = "A";
  double bevel_deg = 15;
  std::string finish = "F400";
  std::string medium = "rope";
  double cuts = 40;
};

MadeArm arm(const Cell& cell) {
  return {
      .arm = {.blade = cell.blade,
              .edge = {.bevel_angle = trials::PerSideAngle{cell.bevel_deg}, .finish = cell.finish},
              .medium = {.name = cell.medium}},
      .log_half_keenness = std::log(cell.cuts),
      .error = 0.03};
}

// 20 degrees last 0.6 times as long as 15, F800 1.5 times as long as F400; in F800 the angle costs
// another factor of 0.8.
MadeFit angle_by_finish() {
  return made_fit({arm({.bevel_deg = 15, .cuts = 40}),
                   arm({.bevel_deg = 20, .cuts = 24}),
                   arm({.bevel_deg = 15, .finish = "F800", .cuts = 60}),
                   arm({.bevel_deg = 20, .finish = "F800", .cuts = 28.8})},
                  1);
}

FactorEffects found_in(const MadeFit& made) {
  return *find_factor_effects(made.trial, arms_lasting(made.data, made.fit, {}), {});
}

TEST(FactorEffects, AreAveragedInLogsOverTheOtherFactorsCells) {
  const FactorEffects found = found_in(angle_by_finish());

  ASSERT_EQ(found.effects.size(), 2U);
  EXPECT_EQ(found.factors[0].what, "bevel angle");
  EXPECT_EQ(found.factors[0].levels, (std::vector<std::string>{"15° per side", "20° per side"}));
  // Closed form: sqrt(24/40 x 28.8/60) and sqrt(60/40 x 28.8/24).
  EXPECT_NEAR(found.effects[0].ratio.median, std::sqrt(0.6 * 0.48), 0.01);
  EXPECT_NEAR(found.effects[1].ratio.median, std::sqrt(1.5 * 1.2), 0.02);
  EXPECT_LT(found.effects[0].simultaneous.lo95, found.effects[0].ratio.lo95);
}

TEST(FactorEffects, HaveAnInteractionThatIsARatioOfRatios) {
  const FactorEffects found = found_in(angle_by_finish());

  ASSERT_EQ(found.interactions.size(), 1U);
  EXPECT_NEAR(found.interactions[0].ratio.median, 0.8, 0.02);  // 0.48 / 0.6
}

// Blades, angles and finishes of 2, 3 and 3 levels: 5 effects, 2 + 2 + 4 interactions.
TEST(FactorEffects, GiveMoreInteractionsThanEffects) {
  std::vector<MadeArm> arms;
  for (const char* blade : {"A", "B"}) {
    for (const double bevel_deg : {15, 20, 25}) {
      for (const char* finish : {"F400", "F800", "F1200"}) {
        arms.push_back(arm({.blade = blade, .bevel_deg = bevel_deg, .finish = finish}));
      }
    }
  }
  const FactorEffects found = found_in(made_fit(arms, 1));

  EXPECT_EQ(found.effects.size(), 5U);
  EXPECT_EQ(found.interactions.size(), 8U);
  EXPECT_TRUE(found.remarks.empty());
}

TEST(FactorEffects, SayWhichArmsAreNotPartOfTheCrossedTable) {
  MadeFit made = made_fit({arm({.bevel_deg = 15, .cuts = 40}),
                           arm({.bevel_deg = 20, .cuts = 24}),
                           arm({.bevel_deg = 15, .finish = "F800", .cuts = 60}),
                           arm({.bevel_deg = 20, .finish = "F800", .cuts = 28.8}),
                           arm({.bevel_deg = 25, .cuts = 15})},
                          2);
  const FactorEffects found = found_in(made);

  EXPECT_EQ(found.arms.size(), 4U);
  EXPECT_EQ(found.arms_left_out, (std::vector<std::size_t>{4}));
}

TEST(FactorEffects, NameAFactorThatChangesOnlyAlongWithTheBlade) {
  const MadeFit made = made_fit({arm({.blade = "A", .bevel_deg = 15}),
                                 arm({.blade = "A", .bevel_deg = 15, .medium = "card"}),
                                 arm({.blade = "B", .bevel_deg = 20}),
                                 arm({.blade = "B", .bevel_deg = 20, .medium = "card"})},
                                3);
  const FactorEffects found = found_in(made);

  EXPECT_EQ(found.factors[0].what, "blade");
  EXPECT_EQ(found.factors[0].goes_with, (std::vector<std::string>{"bevel angle"}));
  EXPECT_EQ(found.factors[1].what, "medium");
}

TEST(FactorEffects, AverageTheBladesOfOneSteel) {
  MadeFit made = made_fit({arm({.blade = "A", .cuts = 30}),
                           arm({.blade = "A", .medium = "card", .cuts = 30}),
                           arm({.blade = "B", .cuts = 50}),
                           arm({.blade = "B", .medium = "card", .cuts = 50}),
                           arm({.blade = "C", .cuts = 80}),
                           arm({.blade = "C", .medium = "card", .cuts = 80})},
                          4);
  made.trial.blades[0].steel = "C75S";
  made.trial.blades[1].steel = "C75S";
  made.trial.blades[2].steel = "X153CrMoV12";
  const FactorEffects found = found_in(made);

  EXPECT_EQ(found.factors[0].what, "steel");
  ASSERT_EQ(found.effects.size(), 2U);
  // Closed form: 80 against the geometric mean of 30 and 50.
  EXPECT_NEAR(found.effects[0].ratio.median, 80 / std::sqrt(1500.0), 0.05);
}

TEST(FactorEffects, AreNotGivenWhereNothingIsCrossed) {
  const MadeFit made = made_fit({arm({.bevel_deg = 15}), arm({.bevel_deg = 20})}, 5);

  EXPECT_FALSE(find_factor_effects(made.trial, arms_lasting(made.data, made.fit, {}), {}));
}

TEST(FactorEffects, OfFiftyBladesAreLeftToTheComparisons) {
  std::vector<MadeArm> arms;
  for (int blade = 0; blade < 50; ++blade) {
    for (const char* medium : {"rope", "card", "felt", "hide"}) {
      arms.push_back(arm({.blade = std::to_string(blade), .medium = medium}));
    }
  }
  const FactorEffects found = found_in(made_fit(arms, 6));

  EXPECT_EQ(found.effects.size(), 3U);  // of the medium
  EXPECT_TRUE(found.interactions.empty());
  EXPECT_EQ(found.remarks.size(), 1U);
}

}  // namespace
}  // namespace keenfall::verdicts
