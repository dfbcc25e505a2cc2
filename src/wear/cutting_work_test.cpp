#include "wear/cutting_work.h"

#include <gtest/gtest.h>

namespace keenfall::wear {
namespace {

CutMedium medium(const std::string& name) { return {.name = name}; }

TEST(Schedule, WritesOutAMixUntilItsCutsAreSpent) {
  const MixedWork mix{.parts = {{.what = medium("clean"), .cuts = 9},
                                {.what = medium("gritty"), .cuts = 1},
                                {.what = WetPause{.duration_hour = 8}}}};
  const Schedule schedule{{.what = medium("first"), .cuts = 5}, {.what = mix, .cuts = 13}};

  const auto list = stretches_of(schedule);

  ASSERT_EQ(list.size(), 5U);
  EXPECT_EQ(list[0].medium->name, "first");
  EXPECT_EQ(list[1].medium->name, "clean");
  EXPECT_EQ(list[1].cuts, 9);
  EXPECT_EQ(list[2].medium->name, "gritty");
  EXPECT_EQ(list[2].cuts, 1);
  EXPECT_EQ(list[3].pause->duration_hour, 8);
  EXPECT_EQ(list[4].cuts, 3);
  EXPECT_EQ(total_cuts(schedule), 18);
}

TEST(Schedule, MayNestMixes) {
  const MixedWork inner{
      .parts = {{.what = medium("a"), .cuts = 1}, {.what = medium("b"), .cuts = 1}}};
  const MixedWork outer{.parts = {{.what = inner, .cuts = 3}, {.what = medium("c"), .cuts = 2}}};

  const Schedule schedule{{.what = outer, .cuts = 10}};
  const auto list = stretches_of(schedule);

  std::string names;
  for (const Stretch& stretch : list) names += stretch.medium->name + std::to_string(stretch.cuts);
  EXPECT_EQ(names, "a1b1a1c2a1b1a1c2");
}

TEST(Schedule, IsEmptyWhereAMixHasNothingToCut) {
  EXPECT_EQ(total_cuts({{.what = MixedWork{}, .cuts = 10}}), 0);
  EXPECT_EQ(total_cuts({}), 0);
}

}  // namespace
}  // namespace keenfall::wear
