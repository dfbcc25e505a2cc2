#include "wear/sensitivity.h"

#include "wear/reduced_apex.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <vector>

namespace keenfall::wear {
namespace {

ApexScenario one_steel() {
  return {.steels = {materials::find_microstructure("AISI A11").value()},
          .work = work_in(known_media()[1]),
          .edge = {.finish = fine_finish()}};
}

const ConstantEffect& effect_of(const Sensitivity& found, const std::string& name) {
  return *std::ranges::find_if(
      found.effects, [&](const ConstantEffect& effect) { return effect.constant.name == name; });
}

// An answer in closed form: wear life goes with the square of the land and the inverse of the rate.
TEST(Sensitivity, RanksTheConstantsOfAKnownAnswer) {
  const ApexAnswer answer = [](const ApexScenario& scenario) -> std::optional<double> {
    return std::pow(scenario.edge.finish.land_width_um, 2) /
           only_medium(scenario.work)->reference_wear_rate_mm3_per_newton_metre;
  };

  const auto found = sensitivity(one_steel(), answer, {.draws = 300}, base::one_thread());

  ASSERT_TRUE(found);
  ASSERT_TRUE(found->joint);
  EXPECT_GT(effect_of(*found, "start width of the land").rank_correlation, 0.6);
  EXPECT_LT(effect_of(*found, "wear rate at resistance 1").rank_correlation, -0.5);
  EXPECT_NEAR(effect_of(*found, "toughness of AISI A11").rank_correlation, 0, 0.25);
  EXPECT_EQ(found->effects[0].constant.name, "start width of the land");
  const auto& land = effect_of(*found, "start width of the land");
  EXPECT_NEAR(*land.answer_at_hi / *land.answer_at_lo, std::pow(2 / 0.6, 2), 1e-9);
  EXPECT_LT(found->joint->lo90, *found->usual_answer);
  EXPECT_GT(found->joint->hi90, *found->usual_answer);
}

TEST(Sensitivity, DoesNotDependOnThreadsAndRepeatsFromItsSeed) {
  const ApexAnswer answer = [](const ApexScenario& scenario) {
    return std::optional<double>(
        reduced_apex(simulation_of(scenario, 0, 1),
                     medium_for(*only_medium(scenario.work), scenario.steels[0]),
                     {.hits = 200})
            .hit_slope_per_cut);
  };
  const SensitivityAsked asked{.draws = 20, .seed = {4}};

  const auto one = sensitivity(one_steel(), answer, asked, base::one_thread()).value();
  const auto many = sensitivity(one_steel(), answer, asked, base::threads(3)).value();

  EXPECT_EQ(one.joint, many.joint);
  for (std::size_t i = 0; i < one.effects.size(); ++i) {
    EXPECT_EQ(one.effects[i].constant.name, many.effects[i].constant.name);
    EXPECT_EQ(one.effects[i].rank_correlation, many.effects[i].rank_correlation);
  }
}

TEST(Sensitivity, CountsDrawsWithoutAnAnswer) {
  const ApexAnswer none = [](const ApexScenario&) { return std::optional<double>(); };

  const auto found = sensitivity(one_steel(), none, {.draws = 5}, base::one_thread()).value();

  EXPECT_EQ(found.without_answer, 5);
  EXPECT_FALSE(found.joint);
  EXPECT_FALSE(found.usual_answer);
}

// Draws that have none are those that lasted longest: what is left must not be told as the range.
TEST(Sensitivity, GivesNoRangeWhereManyDrawsHaveNoAnswer) {
  const auto answered_below = [](double largest) {
    return [largest](const ApexScenario& scenario) {
      const double rate =
          only_medium(scenario.work)->reference_wear_rate_mm3_per_newton_metre / 9e-7;
      return rate < largest ? std::optional(rate) : std::nullopt;
    };
  };
  const auto few =
      sensitivity(one_steel(), answered_below(2.95), {.draws = 200}, base::one_thread()).value();
  const auto many =
      sensitivity(one_steel(), answered_below(2), {.draws = 200}, base::one_thread()).value();

  EXPECT_GT(few.without_answer, 0);
  EXPECT_TRUE(few.joint);
  EXPECT_GT(many.without_answer, 10);
  EXPECT_FALSE(many.joint);
  EXPECT_EQ(many.effects.front().rank_correlation, 0);
}

TEST(Sensitivity, RefusesASingleDrawAndStopsWhereAsked) {
  const ApexAnswer one = [](const ApexScenario&) { return std::optional<double>(1); };

  const auto too_few = sensitivity(one_steel(), one, {.draws = 1}, base::one_thread());
  const auto stopped =
      sensitivity(one_steel(), one, {}, base::one_thread(), [](const auto&) { return false; });

  ASSERT_FALSE(too_few);
  EXPECT_EQ(too_few.error().accepted, "2 or more");
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.error().kind, base::ProblemKind::interrupted);
}

}  // namespace
}  // namespace keenfall::wear
