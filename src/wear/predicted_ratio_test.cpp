#include "wear/predicted_ratio.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace keenfall::wear {
namespace {

// Places among the known media.
constexpr std::size_t kClean = 0;
constexpr std::size_t kGritty = 1;

PredictedBlade blade(const char* steel, double angle_deg = 15) {
  return {.steel = materials::find_microstructure(steel).value(), .apex_angle = {angle_deg}};
}

PredictionAsked asked(PredictedBlade a, PredictedBlade b, std::size_t medium) {
  return {.a = std::move(a),
          .b = std::move(b),
          .work = work_in(known_media()[medium]),
          .edge_length_mm = 2,
          .life = {.runs = 3, .longest_cuts = 20000},
          .over = {.draws = 8}};
}

RatioPrediction predicted(const PredictionAsked& question) {
  return predicted_ratio(question, base::one_thread()).value();
}

// Common practice, no source: in clean stock a wear-resistant steel lasts three to six times as
// long as a plain one (the simulator's media were tuned to it), and in gritty stock the gap closes.
TEST(APredictedRatio, OpensInCleanStockAndClosesInGritty) {
  const RatioPrediction clean = predicted(asked(blade("AISI A11"), blade("75Ni8"), kClean));
  const RatioPrediction gritty = predicted(asked(blade("AISI A11"), blade("75Ni8"), kGritty));

  EXPECT_THAT(clean.ratio.usual_answer.value(), testing::AllOf(testing::Gt(3), testing::Lt(6)));
  EXPECT_LT(gritty.ratio.usual_answer.value(), 2);
  EXPECT_DOUBLE_EQ(clean.ratio.usual_answer.value(), *clean.life_a_cuts / *clean.life_b_cuts);
  EXPECT_LT(*gritty.life_a_cuts, *clean.life_a_cuts / 5);
}

TEST(APredictedRatio, IsARangeThatHoldsTheUsualAnswer) {
  const RatioPrediction clean = predicted(asked(blade("AISI A11"), blade("75Ni8"), kClean));

  ASSERT_TRUE(clean.ratio.joint);
  EXPECT_LT(clean.ratio.joint->lo90, *clean.ratio.usual_answer);
  EXPECT_GT(clean.ratio.joint->hi90, *clean.ratio.usual_answer);
  EXPECT_GT(clean.ratio.joint->hi90 / clean.ratio.joint->lo90, 1.5);
  EXPECT_GT(clean.share_longer.value(), 0.8);
  EXPECT_EQ(clean.ratio.answers.size() + static_cast<std::size_t>(clean.ratio.without_answer), 8U);
}

// Closed form: pure wear lasts as 1 / tan(angle) does.
TEST(APredictedRatio, OfOneSteelAtTwoAnglesIsThatOfTheirTangentsWhereOnlyWearBlunts) {
  PredictionAsked question = asked(blade("75Ni8", 15), blade("75Ni8", 25), kClean);
  std::get<AbrasiveMedium>(question.work.steps[0].what).acts.particles.hits_per_mm_cut = 0;
  std::get<AbrasiveMedium>(question.work.steps[0].what).acts.twist.mean_line_load_newton_per_mm = 0;
  question.finish.tooth_depth_um = 0;

  const RatioPrediction found = predicted(question);

  const double radians = std::numbers::pi / 180;
  EXPECT_NEAR(*found.ratio.usual_answer, std::tan(25 * radians) / std::tan(15 * radians), 0.02);
}

TEST(APredictedRatio, OfABladeWithItselfIsOneWhateverIsDrawn) {
  const RatioPrediction found = predicted(asked(blade("AISI D2"), blade("AISI D2"), kClean));

  EXPECT_DOUBLE_EQ(*found.ratio.usual_answer, 1);
  for (const double answer : found.ratio.answers) EXPECT_DOUBLE_EQ(answer, 1);
  EXPECT_DOUBLE_EQ(found.share_longer.value(), 0.5);
}

// The same carbides in the same draw: hardly another hardness is hardly another life.
TEST(APredictedRatio, OfOneSteelAtTwoHardnessesDrawsItsCarbidesOnce) {
  PredictedBlade harder = blade("AISI D2");
  harder.steel = materials::at_hardness(harder.steel, 61.01).value();

  const RatioPrediction found = predicted(asked(blade("AISI D2"), harder, kClean));

  EXPECT_NE(*found.ratio.usual_answer, 1);
  for (const double answer : found.ratio.answers) EXPECT_NEAR(answer, 1, 0.02);
}

TEST(APredictedRatio, RefusesWhatTheSimulatorRefusesAndStopsWhenAsked) {
  PredictionAsked question = asked(blade("AISI D2", 95), blade("AISI D2"), kClean);
  EXPECT_FALSE(predicted_ratio(question, base::one_thread()));

  question.a.apex_angle = {15};
  question.b.apex_angle = {95};
  EXPECT_FALSE(predicted_ratio(question, base::one_thread()));

  question.b.apex_angle = {15};
  question.life.runs = 0;
  EXPECT_FALSE(predicted_ratio(question, base::one_thread()));

  question.life.runs = 3;
  const auto stopped =
      predicted_ratio(question, base::one_thread(), [](const base::Progress&) { return false; });
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.error().kind, base::ProblemKind::interrupted);
}

TEST(APredictedRatio, GivesTheCardRegressionInsideItsRangeAndSaysWhyNotOutside) {
  PredictionAsked question = asked(blade("AISI D2", 17), blade("AISI D2", 17), kGritty);
  question.over.draws = 2;

  const RatioPrediction inside = predicted(question);
  ASSERT_TRUE(inside.card);
  EXPECT_EQ(inside.card->ratio, (materials::Span{1, 1}));

  question.b.apex_angle = {26};
  const RatioPrediction outside = predicted(question);
  EXPECT_FALSE(outside.card);
  EXPECT_THAT(outside.no_card_because, testing::HasSubstr("52° inclusive"));
}

}  // namespace
}  // namespace keenfall::wear
