#include "wear/uncertain_constants.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace keenfall::wear {
namespace {

using ::testing::HasSubstr;

constexpr double kStatedRate = 0.05;

// Nine clean cuts, a gritty one, four clean ones, then rests: one as usual, one at a stated rate.
ApexScenario mixed_scenario() {
  const AbrasiveMedium clean = known_media()[0];
  return {.steels = {materials::find_microstructure("75Ni8").value()},
          .work = {.name = "mixed",
                   .steps = {{.what = clean, .cuts = 9},
                             {.what = known_media()[1], .cuts = 1},
                             {.what = clean, .cuts = 4},
                             {.what = WetPause{8, kWetLandGrowthUmPerHour}},
                             {.what = WetPause{1, kStatedRate}}}},
          .edge = {.finish = fine_finish()}};
}

const AbrasiveMedium& medium_at(const ApexScenario& scenario, std::size_t step) {
  return std::get<AbrasiveMedium>(scenario.work.steps[step].what);
}

double rate_at(const ApexScenario& scenario, std::size_t step) {
  return std::get<WetPause>(scenario.work.steps[step].what).land_growth_um_per_hour;
}

std::ptrdiff_t count_called(const ApexScenario& scenario, std::string_view name) {
  return std::ranges::count(uncertain_constants(scenario), name, [](const ScenarioConstant& each) {
    return std::string_view(each.constant.name);
  });
}

TEST(UncertainConstants, OfOneMediumBearNoName) {
  ApexScenario scenario = mixed_scenario();
  scenario.work = work_in(known_media()[1]);

  EXPECT_EQ(count_called(scenario, "width of grooves"), 1);
  EXPECT_EQ(count_called(scenario, "growth of the land in a wet pause"), 0);
}

TEST(UncertainConstants, OfMixedWorkAreThoseOfEachMediumOnce) {
  EXPECT_EQ(count_called(mixed_scenario(), "width of grooves in new sisal matting"), 1);
  EXPECT_EQ(count_called(mixed_scenario(), "width of grooves in uplifted sisal matting"), 1);
  EXPECT_EQ(count_called(mixed_scenario(), "width of grooves"), 0);
}

TEST(UncertainConstants, OfAMediumAreSetWhereverItIsCut) {
  const ApexScenario scenario = mixed_scenario();

  const ApexScenario changed =
      with_constant(scenario, "width of grooves in new sisal matting", 2.5).value();

  EXPECT_EQ(medium_at(changed, 0).groove_width_um, 2.5);
  EXPECT_EQ(medium_at(changed, 2).groove_width_um, 2.5);
  EXPECT_EQ(medium_at(changed, 1), medium_at(scenario, 1));
}

TEST(UncertainConstants, HoldTheRateOfCorrosionWithWideBoundsUnlessItWasStated) {
  const auto all = uncertain_constants(mixed_scenario());
  const auto rate = std::ranges::find_if(all, [](const ScenarioConstant& each) {
    return each.constant.field == "land_growth_um_per_hour";
  });
  ASSERT_NE(rate, all.end());
  EXPECT_EQ(rate->constant.estimate.hi / rate->constant.estimate.lo, 1000);

  ApexScenario changed = mixed_scenario();
  rate->set(changed, 0.1);

  EXPECT_EQ(rate_at(changed, 3), 0.1);
  EXPECT_EQ(rate_at(changed, 4), kStatedRate);
}

TEST(UncertainConstants, ThatAreNotThereAreRefusedWithThoseThatAre) {
  const auto refused = with_constant(mixed_scenario(), "luck", 1);

  ASSERT_FALSE(refused);
  EXPECT_THAT(refused.error().accepted, HasSubstr("toughness of 75Ni8"));
}

}  // namespace
}  // namespace keenfall::wear
