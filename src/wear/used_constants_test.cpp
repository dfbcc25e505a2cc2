#include "wear/used_constants.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace keenfall::wear {
namespace {

using ::testing::ElementsAre;

TrialPlan plan_of(std::vector<WorkPlan> works) {
  return {.steels = {materials::find_microstructure("AISI A11").value()},
          .works = std::move(works),
          .edges = {{.finish_name = "fine", .finish = fine_finish(), .apex_angle = {15}},
                    {.finish_name = "fine", .finish = fine_finish(), .apex_angle = {25}}}};
}

std::vector<std::string> names_in(const std::vector<NamedConstants>& all) {
  std::vector<std::string> names;
  for (const NamedConstants& each : all) names.push_back(each.name);
  return names;
}

const materials::UncertainConstant& called(const std::vector<materials::UncertainConstant>& all,
                                           std::string_view field) {
  return *std::ranges::find(all, field, &materials::UncertainConstant::field);
}

TEST(UsedConstants, NameEverySteelMediumAndFinishOnce) {
  const AbrasiveMedium clean = known_media()[0];
  const AbrasiveMedium gritty = known_media()[1];
  const WorkPlan mixed{.name = "mixed",
                       .steps = {{.what = clean, .cuts = 9},
                                 {.what = gritty, .cuts = 1},
                                 {.what = WetPause{.duration_hour = 8}}}};

  const UsedConstants used = used_constants(plan_of({mixed, work_in(clean)}));

  EXPECT_THAT(names_in(used.steels), ElementsAre("AISI A11"));
  EXPECT_THAT(names_in(used.media), ElementsAre("new sisal matting", "uplifted sisal matting"));
  EXPECT_THAT(names_in(used.finishes), ElementsAre("fine"));
  EXPECT_EQ(used.media[1].constants.size(), 15U);
  EXPECT_EQ(called(used.media[1].constants, "hits_per_mm_cut").estimate.typical, 0.4);
}

TEST(UsedConstants, HoldThePlansOwnFigures) {
  TrialPlan plan = plan_of({work_in(known_media()[0])});
  plan.rules.push_reach_um = 44;
  plan.flaw_constant = 0.2;

  const UsedConstants used = used_constants(plan);

  EXPECT_EQ(called(used.model, "push_reach_um").estimate.typical, 44);
  EXPECT_EQ(called(used.model, "flaw_constant").estimate.typical, 0.2);
  EXPECT_EQ(called(used.model, "thread_push_gf_per_um").estimate.typical, kThreadPushGfPerUm);
}

TEST(UsedConstants, OfOneEdgeHoldThoseOfTheForce) {
  const UsedConstants used =
      used_constants(EdgeQuestion{.steel = materials::find_microstructure("75Ni8").value(),
                                  .work = work_in(known_media()[1]),
                                  .edge = {.finish_name = "coarse", .finish = coarse_finish()}});

  EXPECT_EQ(called(used.model, "friction").estimate.typical, CutForce{}.friction);
  EXPECT_THAT(names_in(used.finishes), ElementsAre("coarse"));
}

TEST(UsedConstants, OfAPredictionHoldBothSteelsAndTheMedium) {
  const UsedConstants used = used_constants(
      PredictionAsked{.a = {.steel = materials::find_microstructure("75Ni8").value()},
                      .b = {.steel = materials::find_microstructure("AISI D2").value()},
                      .work = work_in(known_media()[1])});

  EXPECT_THAT(names_in(used.steels), ElementsAre("75Ni8", "AISI D2"));
  EXPECT_THAT(names_in(used.media), ElementsAre("uplifted sisal matting"));
}

}  // namespace
}  // namespace keenfall::wear
