// The tables of docs/methods/apex.md on what the ratio of two steels hangs on: some thousand
// simulated lives.
#include "wear/predicted_ratio.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace keenfall::wear {
namespace {

const ConstantEffect& effect_called(const Sensitivity& found, const std::string& name) {
  return *std::ranges::find_if(
      found.effects, [&](const ConstantEffect& effect) { return effect.constant.name == name; });
}

// By the command given there. The same seed gives the same numbers; 2 % allows for other libraries
// of functions.
TEST(PredictedRatioTables, HoldWhatTheRatioHangsOn) {
  const auto predicted = [](std::size_t medium) {
    return predicted_ratio({.a = {materials::find_microstructure("AISI A11").value(), {15}},
                            .b = {materials::find_microstructure("75Ni8").value(), {15}},
                            .work = work_in(known_media()[medium])},
                           base::threads(2))
        .value()
        .ratio;
  };
  const Sensitivity clean = predicted(0);
  const Sensitivity gritty = predicted(1);

  EXPECT_NEAR(*clean.usual_answer, 4.11, 0.08);
  EXPECT_NEAR(clean.joint->lo90, 2.05, 0.04);
  EXPECT_NEAR(clean.joint->hi90, 5.67, 0.11);
  EXPECT_EQ(clean.effects[0].constant.name, "cap of carbide over matrix resistance");
  EXPECT_NEAR(*clean.effects[0].answer_at_lo, 2.88, 0.06);
  EXPECT_NEAR(*clean.effects[0].answer_at_hi, 5.80, 0.12);
  EXPECT_NEAR(effect_called(clean, "width of grooves").rank_correlation, -0.38, 0.02);
  EXPECT_NEAR(*gritty.usual_answer, 1.17, 0.03);
  EXPECT_NEAR(gritty.joint->lo90, 0.68, 0.02);
  EXPECT_NEAR(gritty.joint->hi90, 2.26, 0.05);
  EXPECT_EQ(gritty.effects[0].constant.name, "flaw constant");
}

}  // namespace
}  // namespace keenfall::wear
