#include "sharpening/resharpening.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

namespace keenfall::sharpening {
namespace {

using testing::HasSubstr;

Stone stone(std::string_view name) { return find_stone(name).value(); }

// 15 degrees per side, 0.3 mm behind the edge, 100 mm of edge, 10 N, strokes of 120 mm.
ResharpeningQuestion a_question(std::string_view steel, double chip_um) {
  return {.edge = {.bevel = {.bevel_angle = {15}, .thickness_behind_edge_mm = 0.3},
                   .damage = {.deepest_chip_um = chip_um}},
          .steel = materials::find_microstructure(steel).value()};
}

Resharpening answer(const ResharpeningQuestion& question, const std::vector<Stone>& stones) {
  return resharpening(question, stones).value();
}

double typical_passes(const ResharpeningQuestion& question, std::string_view name) {
  return answer(question, {stone(name)}).stones.front().typical.passes;
}

// tests/reference/resharpening.py: the same formulas written down again, solved by bisection.
TEST(Resharpening, TakesThePassesThatAnotherProgramFinds) {
  EXPECT_NEAR(typical_passes(a_question("75Ni8", 5), "fused alumina"), 62.611, 2e-3);
  EXPECT_NEAR(typical_passes(a_question("75Ni8", 20), "silicon carbide"), 175.501, 2e-3);
  EXPECT_NEAR(typical_passes(a_question("AISI A11", 10), "fused alumina"), 630.806, 2e-3);
  EXPECT_NEAR(typical_passes(a_question("AISI A11", 20), "silicon carbide"), 275.404, 2e-3);
  EXPECT_NEAR(typical_passes(a_question("AISI A11", 10), "CBN"), 67.025, 2e-3);
  EXPECT_NEAR(typical_passes(a_question("AISI A11", 5), "diamond"), 22.331, 2e-3);
}

TEST(Resharpening, TakesThePassesThatAnotherProgramFindsWithDressing) {
  ResharpeningQuestion question = a_question("AISI A11", 10);
  question.work.dress_every_passes = 30;

  EXPECT_NEAR(typical_passes(question, "fused alumina"), 206.561, 2e-3);
  EXPECT_NEAR(typical_passes(question, "silicon carbide"), 121.610, 2e-3);
}

// The worked number of docs/methods/resharpening.md; areas by hand, passes by tests/reference.
TEST(Resharpening, GivesTheWorkedNumberOfItsMethodPage) {
  ResharpeningQuestion question = a_question("X153CrMoV12", 12);
  question.edge.bevel.bevel_angle = {17};
  question.edge.damage.land_um = 3;
  const Resharpening whole = answer(question, {stone("fused alumina"), stone("diamond")});
  question.edge.micro_bevel_angle = trials::PerSideAngle{20};
  const Resharpening micro = answer(question, {stone("fused alumina"), stone("diamond")});

  EXPECT_NEAR(whole.steel.apex_rise_um, 16.906, 1e-3);
  EXPECT_NEAR(whole.steel.area_um2, 5072.71, 1e-2);
  EXPECT_NEAR(micro.steel.area_um2, 538.75, 1e-2);
  EXPECT_NEAR(whole.stones[0].resistance_ratio, 1.0718, 1e-4);
  EXPECT_NEAR(whole.stones[0].typical.passes, 654.71, 1e-2);
  EXPECT_NEAR(whole.stones[1].typical.passes, 75.511, 1e-3);
  EXPECT_NEAR(micro.stones[0].typical.passes, 26.188, 1e-3);
  EXPECT_NEAR(micro.stones[1].typical.passes, 8.020, 1e-3);
}

// 100 mm of edge by an area of 6011.609 um^2 (worked by hand) are 0.6011609 mm^3.
TEST(Resharpening, RemovesAreaTimesLength) {
  const Resharpening found = answer(a_question("75Ni8", 20), {stone("diamond")});

  EXPECT_NEAR(found.steel_mm3, 0.6011609, 1e-7);
  EXPECT_DOUBLE_EQ(found.steel.apex_rise_um, 20);
}

TEST(Resharpening, ByAMicroBevelTakesAFractionOfThePasses) {
  ResharpeningQuestion question = a_question("75Ni8", 10);
  const double whole = typical_passes(question, "diamond");
  question.edge.micro_bevel_angle = trials::PerSideAngle{20};

  // Areas worked by hand: 3002.902 and 101.567 um^2; on diamond passes go with the area.
  EXPECT_NEAR(whole / typical_passes(question, "diamond"), 3002.902 / 101.567, 1e-3);
}

// Pace and dressing by hand: 206.6 passes at 90 a minute are 2.295 min; dressed after every 30 of
// them, six times in between, at 1 min each.
TEST(Resharpening, CountsTheMinutesOfPassesAndDressings) {
  ResharpeningQuestion question = a_question("AISI A11", 10);
  question.work.dress_every_passes = 30;

  const Effort effort = answer(question, {stone("fused alumina")}).stones[0].typical;

  EXPECT_DOUBLE_EQ(effort.dressings, 6);
  EXPECT_NEAR(effort.minutes, 206.561 / 90 + 6, 1e-4);
}

TEST(Resharpening, IsARangeThatHoldsTheTypicalAnswerAndIsWide) {
  const Resharpening found =
      answer(a_question("AISI A11", 10), {known_stones().begin(), known_stones().end()});

  for (const StoneEffort& each : found.stones) {
    EXPECT_LT(each.passes.lo90, each.typical.passes) << each.stone.name;
    EXPECT_GT(each.passes.hi90, each.typical.passes) << each.stone.name;
    EXPECT_GT(each.passes.hi90 / each.passes.lo90, 3) << each.stone.name;
    EXPECT_LT(each.minutes.lo90, each.typical.minutes) << each.stone.name;
  }
}

// What all stones share cancels between them: a ratio is better known than its two sides.
TEST(Resharpening, KnowsTheRatioOfTwoStonesBetterThanEither) {
  const Resharpening found =
      answer(a_question("AISI A11", 10), {stone("diamond"), stone("fused alumina")});
  const StoneEffort& alumina = found.stones[1];

  EXPECT_DOUBLE_EQ(found.stones[0].times_first.lo95, 1);
  EXPECT_DOUBLE_EQ(found.stones[0].times_first.hi95, 1);
  EXPECT_GT(alumina.times_first.lo90, 1);
  EXPECT_LT(std::log(alumina.times_first.hi90 / alumina.times_first.lo90),
            std::log(alumina.passes.hi90 / alumina.passes.lo90) + 0.5);
}

// Two stones of one kind are two stones: each has a cutting power and a hardness of its own.
TEST(Resharpening, DrawsEveryStoneByItself) {
  const auto twice = answer(a_question("AISI A11", 10), {stone("diamond"), stone("diamond")});

  EXPECT_LT(twice.stones[1].times_first.lo90, 0.7);
  EXPECT_GT(twice.stones[1].times_first.hi90, 1.4);
  EXPECT_NEAR(twice.stones[1].times_first.median, 1, 0.1);
}

TEST(Resharpening, IsTheSameForTheSameSeedAndNearlySoForAnother) {
  ResharpeningQuestion question = a_question("AISI D2", 10);
  const auto median = [&question] {
    return answer(question, {stone("fused alumina")}).stones[0].passes.median;
  };
  const double first = median();

  EXPECT_EQ(median(), first);
  question.seed = {.number = 2};
  EXPECT_NE(median(), first);
  EXPECT_NEAR(median() / first, 1, 0.15);
}

// The rate by force and path is known to a factor of ten, and passes on diamond go with its
// inverse: by hand 10.
TEST(Resharpening, HangsMostOnWhatIsKnownWorst) {
  const Resharpening found = answer(a_question("75Ni8", 10), {stone("diamond")});

  ASSERT_FALSE(found.hangs_on.empty());
  EXPECT_EQ(found.hangs_on.front().constant.name, "steel worn off by force and path");
  EXPECT_NEAR(found.hangs_on.front().passes_at_lo / found.hangs_on.front().passes_at_hi, 10, 1);
  for (const HangsOn& each : found.hangs_on) EXPECT_FALSE(each.constant.estimate.is_known());
}

TEST(Resharpening, OfAnEdgeWithoutDamageTakesNothing) {
  const Resharpening found = answer(a_question("75Ni8", 0), {stone("fused alumina")});

  EXPECT_EQ(found.stones[0].typical, Effort{});
  EXPECT_EQ(found.stones[0].passes.hi95, 0);
}

TEST(Resharpening, TellsAllThatCannotBeWorkedWithAtOnce) {
  ResharpeningQuestion question = a_question("75Ni8", 10);
  question.edge.edge_length_mm = 0;
  question.edge.bevel.thickness_behind_edge_mm = -1;
  question.work.passes_per_minute = 0;
  std::vector<std::string> columns;
  for (const auto& problem : problems_of(question)) columns.push_back(problem.place.column);

  EXPECT_THAT(columns, testing::ElementsAre("thickness_behind_edge", "edge_length", "pace"));
}

TEST(Resharpening, RefusesWhatCannotBeWorkedWith) {
  const std::vector<Stone> stones = {stone("diamond")};
  const auto refusal_of = [&stones](const auto& change) {
    ResharpeningQuestion question = a_question("75Ni8", 10);
    change(question);
    return resharpening(question, stones).error().place.column;
  };
  const double not_a_number = std::numeric_limits<double>::quiet_NaN();

  EXPECT_EQ(refusal_of([](auto& q) { q.edge.edge_length_mm = 0; }), "edge_length");
  EXPECT_EQ(refusal_of([](auto& q) { q.work.stroke.force_newton = -1; }), "force");
  EXPECT_EQ(refusal_of([&](auto& q) { q.work.stroke.length_mm = not_a_number; }), "stroke_length");
  EXPECT_EQ(refusal_of([](auto& q) { q.work.passes_per_minute = 0; }), "pace");
  EXPECT_EQ(refusal_of([](auto& q) { q.work.dress_every_passes = 0; }), "dress_every");
  EXPECT_EQ(refusal_of([](auto& q) { q.work.minutes_per_dressing = -1; }), "dressing_time");
  EXPECT_EQ(refusal_of([](auto& q) { q.edge.edge_length_mm = 1e308; }), "edge_length");
  EXPECT_EQ(refusal_of([](auto& q) { q.work.stroke.force_newton = 1e-323; }), "force");
  EXPECT_EQ(refusal_of([](auto& q) { q.work.passes_per_minute = 1e-307; }), "pace");
  EXPECT_EQ(refusal_of([](auto& q) { q.edge.bevel.bevel_angle = {1e-310}; }), "bevel_angle");
  EXPECT_EQ(refusal_of([](auto& q) { q.edge.bevel.bevel_angle = {1}; }), "primary_angle");
  EXPECT_EQ(refusal_of([](auto& q) { q.edge.micro_bevel_angle = trials::PerSideAngle{10}; }),
            "micro_bevel");
}

TEST(Stones, AreFoundByAnyNameOfTheirAbrasive) {
  EXPECT_EQ(stone("Alumina").name, "fused alumina");
  EXPECT_EQ(stone("SiC").name, "silicon carbide");
  EXPECT_EQ(stone("cubic boron nitride").name, "CBN");
}

TEST(Stones, ThatTheTableDoesNotHoldAreRefusedWithThoseItDoes) {
  for (const char* name : {"garnet", "cheese", ""}) {
    const auto none = find_stone(name);
    ASSERT_FALSE(none.has_value()) << name;
    EXPECT_EQ(none.error().accepted, "fused alumina, silicon carbide, CBN, diamond");
  }
}

TEST(Stones, LieInsideTheirRangesWithAKnownSourceForEveryValue) {
  for (const Stone& each : known_stones()) {
    for (const auto& [member, belongs_to, constant] :
         removal_estimates(materials::known_microstructures().front(), each)) {
      const Estimate& estimate = constant.estimate;
      EXPECT_LE(estimate.lo, estimate.typical) << each.name << constant.name;
      EXPECT_GE(estimate.hi, estimate.typical) << each.name << constant.name;
      EXPECT_NE(materials::find_source(estimate.from.source_key), nullptr) << constant.name;
    }
  }
}

}  // namespace
}  // namespace keenfall::sharpening
