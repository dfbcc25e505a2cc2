#include "verdicts/also_differs.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace keenfall::verdicts {
namespace {

trials::Arm an_arm(const std::string& blade, const std::string& finish, double deg) {
  return {.blade = blade,
          .edge = {.bevel_angle = trials::PerSideAngle{deg}, .finish = finish},
          .medium = {.name = "sisal"}};
}

AlsoDiffers found(const trials::Trial& trial,
                  const trials::Arm& a,
                  const trials::Arm& b,
                  const std::string& what) {
  const auto all = what_else_differs(trial, {a, b}, {});
  const auto one = std::ranges::find(all, what, &AlsoDiffers::what);
  return one == all.end() ? AlsoDiffers{.what = "missing"} : *one;
}

TEST(WhatElseDiffers, IsMatchedDiffersOrNotRecorded) {
  const trials::Arm a = an_arm("A", "9 um diamond", 17);
  const trials::Arm b = an_arm("B", "9 um diamond", 20);
  const trials::Trial trial{
      .blades = {{.name = "A", .hardness = trials::Hardness{.reading = 58}}, {.name = "B"}}};

  EXPECT_EQ(found(trial, a, b, "finish").matching, Matching::matched);
  EXPECT_EQ(found(trial, a, b, "bevel angle").matching, Matching::differs);
  EXPECT_EQ(found(trial, a, b, "bevel angle").b, "20° per side");
  EXPECT_EQ(found(trial, a, b, "apex angle").matching, Matching::not_recorded);
  EXPECT_EQ(found(trial, a, b, "hardness").matching, Matching::not_recorded);
  EXPECT_EQ(found(trial, a, b, "hardness").a, "58 HRC");
}

TEST(WhatElseDiffers, NeverTakesABareGritNumberAsMatchedAcrossStones) {
  const trials::Trial trial{.blades = {{.name = "A"}, {.name = "B"}}};

  EXPECT_EQ(found(trial, an_arm("A", "1000", 17), an_arm("B", "1000", 17), "finish").matching,
            Matching::not_recorded);
}

TEST(WhatElseDiffers, ComparesLotsAndWhoCutOverTheRunsOfEachArm) {
  const trials::Arm a = an_arm("A", "", 17);
  const trials::Arm b = an_arm("B", "", 17);
  const trials::Trial trial{
      .blades = {{.name = "A"}, {.name = "B"}},
      .runs = {{.name = "1", .arm = a, .medium_lot = "roll 1", .operator_name = "J"},
               {.name = "2", .arm = a, .medium_lot = "roll 2", .operator_name = "J"},
               {.name = "1", .arm = b, .medium_lot = "roll 2", .operator_name = "J"}}};

  EXPECT_EQ(found(trial, a, b, "lot of the medium").matching, Matching::differs);
  EXPECT_EQ(found(trial, a, b, "who cut").matching, Matching::matched);
}

}  // namespace
}  // namespace keenfall::verdicts
