#include "workbench/reduced_curve.h"
#include "workbench/apex_catalogue.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace keenfall::workbench {
namespace {

wear::ApexScenario scenario_of(const std::string& steel, const std::string& medium) {
  return {.steels = {materials::find_microstructure(steel).value()},
          .work = wear::work_in(find_medium(apex_catalogue({}).value(), medium).value()),
          .edge = {.finish = wear::fine_finish(), .apex_angle = {15}}};
}

ReducedCurve reduced(const wear::ApexScenario& scenario, long cuts) {
  return reduced_curve(scenario, {.cuts = cuts, .runs = 60}, base::one_thread()).value();
}

struct Case {
  const char* steel;
  const char* medium;
  long cuts;  // about where the edge is eight times as blunt, as a person might go
};

// Against the simulator, which the curve does not know: the misfit of an earlier trial
// implementation was 0.1 to 1.0 % (from memory of its notes); 2 % is held here, since the mean of
// 60 runs has an error of its own.
class AReducedCurve : public ::testing::TestWithParam<Case> {};

TEST_P(AReducedCurve, LiesWithinTwoPerCentOfTheSimulatedMean) {
  const auto& [steel, medium, cuts] = GetParam();

  const ReducedCurve curve = reduced(scenario_of(steel, medium), cuts);

  EXPECT_TRUE(curve.fitted.converged);
  EXPECT_TRUE(curve.fitted.wear_was_known);
  EXPECT_LT(curve.fitted.root_mean_square_misfit, 0.02);
}

INSTANTIATE_TEST_SUITE_P(SteelsAndMedia,
                         AReducedCurve,
                         ::testing::Values(Case{"AISI A11", "new sisal matting", 400},
                                           Case{"75Ni8", "new sisal matting", 400},
                                           Case{"AISI A11", "uplifted sisal matting", 100},
                                           Case{"75Ni8", "uplifted sisal matting", 100}));

// Single hits on a fresh edge foretell the first cuts: within 15 %, since hits begin to overlap.
TEST(AReducedCurve, ComputedWithoutACutForetellsTheFirstOnes) {
  for (const char* steel : {"AISI A11", "75Ni8"}) {
    const ReducedCurve curve = reduced(scenario_of(steel, "uplifted sisal matting"), 100);

    EXPECT_EQ(curve.mean[3].cuts, 3);
    const double rise = curve.mean[3].bluntness - 1;
    EXPECT_NEAR((blunting::bluntness(curve.computed, 3) - 1) / rise, 1, 0.15) << steel;
  }
}

// Closed form: with nothing but wear the curve is exact.
TEST(AReducedCurve, IsThatOfPureWearWhereNothingHits) {
  wear::ApexScenario scenario = scenario_of("75Ni8", "new sisal matting");
  std::get<wear::AbrasiveMedium>(scenario.work.steps[0].what).acts.particles.hits_per_mm_cut = 0;
  std::get<wear::AbrasiveMedium>(scenario.work.steps[0].what)
      .acts.twist.mean_line_load_newton_per_mm = 0;
  scenario.edge.finish.tooth_depth_um = 0;

  const ReducedCurve curve = reduced(scenario, 200);

  EXPECT_EQ(curve.computed.hit_slope_per_cut, 0);
  for (const blunting::CurvePoint& point : curve.mean) {
    EXPECT_NEAR(blunting::bluntness(curve.computed, point.cuts), point.bluntness, 1e-9);
  }
}

// Policy of the method page: with the wear scale free, hits are taken for wear.
TEST(AReducedCurve, FittedWithoutItsWearScaleFitsAsWellAndAttributesWrongly) {
  const ReducedCurve curve = reduced(scenario_of("75Ni8", "uplifted sisal matting"), 100);

  const auto free_fit = blunting::fit_wear_and_hits(curve.mean).value();

  EXPECT_LT(free_fit.root_mean_square_misfit, 0.02);
  EXPECT_GT(std::abs(std::log(*free_fit.curve.wear_scale_cuts / *curve.computed.wear_scale_cuts)),
            std::log(1.3));
}

// The limit of ever less wear is none: no wear scale may be found where there is no wear.
TEST(AReducedCurve, OfAMediumThatDoesNotWearIsOfHitsAlone) {
  wear::ApexScenario scenario = scenario_of("AISI A11", "uplifted sisal matting");
  std::get<wear::AbrasiveMedium>(scenario.work.steps[0].what)
      .reference_wear_rate_mm3_per_newton_metre = 0;
  const ReducedCurve none = reduced(scenario, 100);
  std::get<wear::AbrasiveMedium>(scenario.work.steps[0].what)
      .reference_wear_rate_mm3_per_newton_metre = 1e-12;
  const ReducedCurve hardly = reduced(scenario, 100);

  EXPECT_EQ(none.fitted.curve.wear_scale_cuts, std::nullopt);
  EXPECT_NEAR(none.fitted.curve.hit_slope_per_cut / hardly.fitted.curve.hit_slope_per_cut, 1, 1e-3);
}

TEST(AReducedCurve, IsRefusedWhereTheLoadGrowsWithTheLand) {
  wear::ApexScenario scenario = scenario_of("75Ni8", "new sisal matting");
  std::get<wear::AbrasiveMedium>(scenario.work.steps[0].what).acts.wear.load_growth_exponent = 1;

  EXPECT_FALSE(reduced_curve(scenario, {}, base::one_thread()));
}

TEST(AReducedCurve, RefusesWhatTheSimulatorRefuses) {
  wear::ApexScenario scenario = scenario_of("75Ni8", "new sisal matting");
  scenario.edge.finish.land_width_um = -1;

  EXPECT_FALSE(reduced_curve(scenario, {}, base::one_thread()));
}

}  // namespace
}  // namespace keenfall::workbench
