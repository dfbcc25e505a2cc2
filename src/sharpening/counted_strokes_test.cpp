#include "sharpening/counted_strokes.h"

#include "sharpening/resharpening.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <numbers>
#include <stdexcept>
#include <string>
#include <vector>

namespace keenfall::sharpening {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

constexpr double kMm3PerSection = 1e-6;  // of a um^2 along a mm

double tangent_of(double deg) { return std::tan(deg * std::numbers::pi / 180); }
double sine_of(double deg) { return std::sin(deg * std::numbers::pi / 180); }

Bevel a_counted_bevel(double primary_deg = 1.5) {
  return {.bevel_angle = {15}, .primary_angle = {primary_deg}, .thickness_behind_edge_mm = 0.3};
}

CountedStrokes counted(const BevelCount& count, const Bevel& bevel = a_counted_bevel()) {
  return counted_strokes(count, bevel).value();
}

double removed(const BevelCount& count, const Bevel& bevel = a_counted_bevel()) {
  return counted(count, bevel).removed_mm3.typical;
}

// On parallel faces the whole bevel moves back: T h of section.
TEST(CountedStrokes, ByHeightOnParallelFacesTookThicknessTimesHeight) {
  EXPECT_NEAR(removed({.passes = 60, .edge_length_mm = 80, .height_um = 4}, a_counted_bevel(0)),
              kMm3PerSection * 300 * 4 * 80,
              1e-12);
}

// By hand: 300 * 20 + 400 * tan 1.5 * tan 15/(tan 15 - tan 1.5) = 6011.609 um^2.
TEST(CountedStrokes, ByHeightTookTheAreaWorkedByHand) {
  EXPECT_NEAR(removed({.passes = 60, .height_um = 20}), 0.6011609, 1e-7);
}

// The width of the bevel itself grows from T/(2 sin 15) to (T + 2 h a t/(t - a))/(2 sin 15) while
// the apex goes up by h: both tell of the same steel.
TEST(CountedStrokes, ByTheWidthOfTheBevelTookWhatTheHeightTells) {
  const double a = tangent_of(1.5);
  const double t = tangent_of(15);
  const double thicker_um = 2 * 20 * a * t / (t - a);
  const BevelCount by_width = {.passes = 60,
                               .width_before_um = 300 / (2 * sine_of(15)),
                               .width_after_um = (300 + thicker_um) / (2 * sine_of(15)),
                               .error_um = 0.01};

  EXPECT_NEAR(removed(by_width) / removed({.passes = 60, .height_um = 20}), 1, 1e-9);
}

// The section between an old and a new test bevel, integrated from the new apex down, in pieces
// between which both outlines are straight.
TEST(CountedStrokes, ByTheWidthOfATestBevelTookWhatIntegratingTheSectionGives) {
  const double t = tangent_of(15);
  const double m = tangent_of(20);
  for (const double before_um : {0.0, 30.0, 60.0}) {
    const double after_um = 76;
    const auto apex_of = [&](double width_um) {  // above the point where the bevels would meet
      return width_um * sine_of(20) * (m - t) / (t * m);
    };
    const auto half_of = [&](double above_um, double width_um) {
      return std::max(0.0, std::min(above_um * t, (above_um - apex_of(width_um)) * m));
    };
    const auto goes = [&](double above_um) {
      return 2 * (half_of(above_um, before_um) - half_of(above_um, after_um));
    };
    const std::vector<double> corners = {apex_of(before_um),
                                         before_um * sine_of(20) / t,
                                         apex_of(after_um),
                                         after_um * sine_of(20) / t};
    std::vector<double> sorted = corners;
    std::ranges::sort(sorted);
    double area_um2 = 0;
    for (std::size_t i = 1; i < sorted.size(); ++i) {
      area_um2 +=
          boost::math::quadrature::gauss<double, 7>::integrate(goes, sorted[i - 1], sorted[i]);
    }

    const double found_mm3 = removed({.passes = 12,
                                      .width_before_um = before_um,
                                      .width_after_um = after_um,
                                      .face_angle = trials::PerSideAngle{20}});

    EXPECT_NEAR(found_mm3 / (kMm3PerSection * area_um2 * 100), 1, 1e-9) << before_um;
  }
}

TEST(CountedStrokes, AreAsUncertainAsTheirReadings) {
  const auto by = [](double width_um) {
    return removed(
        {.passes = 12, .width_after_um = width_um, .face_angle = trials::PerSideAngle{20}});
  };

  const Estimate stated = counted({.passes = 12,
                                   .width_after_um = 80,
                                   .face_angle = trials::PerSideAngle{20},
                                   .error_um = 3})
                              .removed_mm3;
  const Estimate unstated =
      counted({.passes = 12, .height_um = 20}, a_counted_bevel(0)).removed_mm3;

  EXPECT_DOUBLE_EQ(stated.lo, by(77));
  EXPECT_DOUBLE_EQ(stated.hi, by(83));
  EXPECT_NEAR(unstated.lo / unstated.typical, 0.9, 1e-12);
  EXPECT_NEAR(unstated.hi / unstated.typical, 1.1, 1e-12);
}

RemovalConstants some_constants() {
  RemovalConstants constants;
  constants.matrix_hv = 700;
  constants.abrasive_hv = 8000;  // thus R = 1 without carbides
  constants.groove_width_um = 4;
  constants.carbide_diameter_um = 1;
  constants.carbide_hv = 1000;
  constants.cutting_power_ratio = 3;
  constants.blunt_share_fraction = 0.2;
  return constants;
}

// k0 = V R/(e F s [k n + (1 - k) n_g (1 - exp(-n/n_g))]), with R = 1, n_g = 120, by hand.
TEST(CountedStrokes, GiveTheClosedFormOfK0) {
  RemovalConstants constants = some_constants();
  constants.counted_mm3 = 0.05;
  const CountedStrokes strokes = {.passes = 60, .stroke = {12, 90}};

  const double k0 = calibrated(constants, strokes).wear_mm3_per_newton_m;

  const double fresh = 0.2 * 60 + 0.8 * 120 * (1 - std::exp(-0.5));
  EXPECT_NEAR(k0 / (0.05 / (3 * 12 * 0.09 * fresh)), 1, 1e-12);
  constants.later_stroke_ratio = 1.25;
  EXPECT_NEAR(calibrated(constants, strokes).wear_mm3_per_newton_m / k0, 1.25, 1e-12);
}

ResharpeningQuestion a_counted_question(double chip_um) {
  return {.edge = {.bevel = a_counted_bevel(), .damage = {.deepest_chip_um = chip_um}},
          .steel = materials::find_microstructure("AISI A11").value()};
}

Resharpening counted_answer(const ResharpeningQuestion& question, std::string_view stone) {
  return resharpening(question, std::vector{find_stone(stone).value(), find_stone("CBN").value()})
      .value();
}

// On a stone that stays fresh n passes for V are n V'/V for V', whatever its constants; half the
// force takes twice as many.
TEST(CountedStrokes, OnAStoneThatStaysFreshGiveTheRuleOfThree) {
  ResharpeningQuestion question = a_counted_question(10);
  question.counted = counted({.passes = 20, .height_um = 5});
  const double job_mm3 = counted_answer(question, "diamond").steel_mm3;
  const double expected = 20 * job_mm3 / question.counted->removed_mm3.typical;

  EXPECT_NEAR(counted_answer(question, "diamond").stones[0].typical.passes / expected, 1, 1e-9);
  question.work.stroke.force_newton = 5;
  EXPECT_NEAR(counted_answer(question, "diamond").stones[0].typical.passes / expected, 2, 1e-9);
}

// Where the same steel is taken as was counted, every constant cancels but the count and the hand.
TEST(CountedStrokes, LeaveOnlyTheReadingAndTheHandWhereTheSameIsDoneAgain) {
  ResharpeningQuestion question = a_counted_question(5);
  question.counted = counted({.passes = 200, .height_um = 5, .error_um = 0});
  const Resharpening found = counted_answer(question, "fused alumina");

  EXPECT_NEAR(found.stones[0].typical.passes, 200, 1e-6);
  EXPECT_EQ(found.hangs_on.front().constant.field, "later_stroke_ratio");
  for (std::size_t i = 1; i < found.hangs_on.size(); ++i) {
    EXPECT_NEAR(found.hangs_on[i].passes_at_lo, 200, 1e-6) << found.hangs_on[i].constant.name;
    EXPECT_NEAR(found.hangs_on[i].passes_at_hi, 200, 1e-6) << found.hangs_on[i].constant.name;
  }
}

// The worked number of docs/methods/resharpening.md, worked by tests/reference/resharpening.py.
TEST(CountedStrokes, GiveTheWorkedNumberOfTheirMethodPage) {
  ResharpeningQuestion question = a_counted_question(12);
  question.steel = materials::find_microstructure("X153CrMoV12").value();
  question.edge.bevel.bevel_angle = {17};
  question.edge.damage.land_um = 3;
  question.counted = counted(
      {.passes = 20, .width_after_um = 80, .face_angle = trials::PerSideAngle{22}, .error_um = 3},
      question.edge.bevel);
  const Resharpening found = counted_answer(question, "fused alumina");

  EXPECT_NEAR(question.counted->removed_mm3.typical, 0.0714687, 1e-7);
  EXPECT_NEAR(question.counted->removed_mm3.lo, 0.0662091, 1e-7);
  EXPECT_NEAR(question.counted->removed_mm3.hi, 0.0769294, 1e-7);
  EXPECT_NEAR(found.calibration->wear_mm3_per_newton_m, 3.406587e-3, 1e-8);
  EXPECT_NEAR(found.stones[0].typical.passes, 246.513, 2e-3);
  EXPECT_NEAR(found.stones[0].passes.lo90, 150, 10);
  EXPECT_NEAR(found.stones[0].passes.hi90, 520, 20);
}

TEST(CountedStrokes, ShrinkTheRangeOfTheirStoneAndLeaveTheOthersAlone) {
  ResharpeningQuestion question = a_counted_question(10);
  const Resharpening by_model = counted_answer(question, "diamond");
  question.counted = counted({.passes = 20, .height_um = 5});
  const Resharpening by_count = counted_answer(question, "diamond");
  const auto span = [](const numerics::Interval& passes) {
    return std::log(passes.hi90 / passes.lo90);
  };

  EXPECT_LT(span(by_count.stones[0].passes), span(by_model.stones[0].passes) / 3);
  EXPECT_EQ(by_count.stones[1].passes, by_model.stones[1].passes);
  ASSERT_TRUE(by_count.calibration.has_value());
  EXPECT_EQ(by_count.calibration->passes_of_model, by_model.stones[0].passes);
  EXPECT_LT(span(by_count.calibration->fresh_mm3_per_pass),
            span(by_count.calibration->fresh_of_model_mm3_per_pass) / 3);
  EXPECT_FALSE(by_model.calibration.has_value());
}

// A stone and a steel drawn from the model's own ranges take steel in 40 passes; the readings err
// by up to a tenth and the hand is another on the day of the work. The passes that the work then
// truly takes lie in the middle 90 % of the draws about nine times in ten.
TEST(CountedStrokes, RecoverThePassesOfStonesThatTheyWereSimulatedOn) {
  constexpr int kStones = 300;
  const Stone stone = find_stone("fused alumina").value();
  ResharpeningQuestion question = a_counted_question(10);
  question.draws = 400;
  const auto constants = removal_estimates(question.steel, stone);
  const double job_mm3 = counted_answer(question, "fused alumina").steel_mm3;
  numerics::RandomStream shared({.number = 11}, 0);
  numerics::RandomStream of_stone({.number = 11}, 1);
  int inside = 0;
  for (int i = 0; i < kStones; ++i) {
    RemovalConstants truth = drawn_constants(constants, shared, of_stone);
    const double taken_mm3 = removed_mm3(cutting_rate(truth, {}), 40);
    truth.wear_mm3_per_newton_m *= 0.8 * std::pow(1.25 / 0.8, of_stone.uniform());
    const double true_passes =
        passes_to_remove(cutting_rate(truth, {}), job_mm3, std::nullopt).value();
    const double read_mm3 = taken_mm3 * 0.9 * std::pow(1.1 / 0.9, of_stone.uniform());
    question.seed = {.number = static_cast<std::uint64_t>(i)};
    question.counted =
        CountedStrokes{.passes = 40, .removed_mm3 = {read_mm3, read_mm3 / 1.1, read_mm3 / 0.9, {}}};

    const auto passes = resharpening(question, {&stone, 1}).value().stones[0].passes;

    inside += passes.lo90 <= true_passes && true_passes <= passes.hi90 ? 1 : 0;
  }

  EXPECT_NEAR(inside / static_cast<double>(kStones), 0.9, 0.05);
}

std::vector<std::string> refused(const BevelCount& count, const Bevel& bevel = a_counted_bevel()) {
  std::vector<std::string> columns;
  const auto strokes = counted_strokes(count, bevel);
  if (strokes) return {"not refused"};
  for (const base::Problem& problem : strokes.error()) columns.push_back(problem.place.column);
  return columns;
}

TEST(CountedStrokes, AreRefusedWithAllThatIsWrongWithThem) {
  const trials::PerSideAngle twenty = {20};
  EXPECT_THAT(refused({.passes = 0, .stroke = {-1, 0}, .height_um = -4}),
              ElementsAre("counted_passes", "counted_force", "counted_stroke", "counted_height"));
  EXPECT_THAT(refused({.passes = 20}), ElementsAre("counted_passes"));
  EXPECT_THAT(refused({.passes = 20.5, .height_um = 4}), ElementsAre("counted_passes"));
  EXPECT_THAT(refused({.passes = 20, .height_um = 4, .width_after_um = 9}),
              ElementsAre("counted_height"));
  EXPECT_THAT(refused({.passes = 20, .width_after_um = 80}), ElementsAre("counted_width_before"));
  EXPECT_THAT(
      refused({.passes = 20, .width_before_um = 580, .width_after_um = 590}, a_counted_bevel(0)),
      ElementsAre("counted_width"));
  EXPECT_THAT(refused({.passes = 20, .width_after_um = 80, .face_angle = {{15}}}),
              ElementsAre("counted_angle"));
  EXPECT_THAT(refused({.passes = 20, .width_after_um = 900, .face_angle = twenty}),
              ElementsAre("counted_width"));
  EXPECT_THAT(
      refused({.passes = 20, .width_before_um = 78, .width_after_um = 80, .face_angle = twenty}),
      ElementsAre("counted_width"));
  EXPECT_THAT(refused({.passes = 20, .height_um = 4, .error_um = 5}),
              ElementsAre("counted_height"));
  EXPECT_THAT(counted_strokes({.passes = 20, .height_um = 4, .error_um = 5}, a_counted_bevel())
                  .error()[0]
                  .sentence,
              HasSubstr("differs by no more than the readings err"));
}

TEST(CountedStrokes, OfNoSteelCalibrateNothing) {
  EXPECT_THROW((void)calibrated(some_constants(), {.passes = 10}), std::logic_error);
}

}  // namespace
}  // namespace keenfall::sharpening
