#include "cli/judgement_text.h"

#include "cli/arms_table.h"
#include "cli/caveats.h"
#include "cli/curve_drawing.h"
#include "cli/interval_drawing.h"
#include "cli/widest_line.h"
#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <utility>

namespace keenfall::cli {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using verdicts::Judgement;
using verdicts::testing::made_arm;
using verdicts::testing::made_comparison;
using verdicts::testing::made_judgement;

Judgement many_arms_with_long_names() {
  Judgement judgement = made_judgement();
  judgement.arms.clear();
  judgement.media.reset();
  judgement.comparisons.clear();
  judgement.runs.clear();
  for (int i = 0; i < 24; ++i) {
    judgement.arms.push_back(made_arm("a blade with rather a long name " + std::to_string(i),
                                      "uplifted entrance matting full of grit",
                                      20 + 10 * i));
  }
  for (std::size_t a = 1; a < 24; ++a) {
    judgement.comparisons.push_back(made_comparison(a, 0, 2, 0.4, verdicts::Verdict::longer));
  }
  return judgement;
}

Judgement one_arm() {
  Judgement judgement = made_judgement();
  judgement.arms.resize(1);
  judgement.media.reset();
  judgement.runs.resize(1);
  judgement.comparisons.clear();
  return judgement;
}

std::string whole(const Judgement& judgement, const Look& look) {
  return judgements_text({judgement}, HowMuch::everything, look);
}

TEST(TheWholeText, KeepsWithinTheWidth) {
  for (const int width : {60, 80, 120}) {
    for (const bool unicode : {true, false}) {
      for (const Judgement& judgement :
           {made_judgement(), many_arms_with_long_names(), one_arm()}) {
        EXPECT_LE(widest_line(whole(judgement, {.width = width, .unicode = unicode})), width);
      }
    }
  }
}

TEST(TheWholeText, IsPlainAsciiWhereTheLookIs) {
  const std::string text = whole(made_judgement(), {.unicode = false});

  EXPECT_TRUE(
      std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80U; }));
}

TEST(TheWholeText, HasColourOnlyWhereTheLookHas) {
  EXPECT_THAT(whole(made_judgement(), {.colour = true}), HasSubstr("\x1b["));
  EXPECT_THAT(whole(made_judgement(), {.colour = false}), Not(HasSubstr("\x1b[")));
}

TEST(TheWholeText, NeverLeavesTrailingSpaces) {
  EXPECT_THAT(whole(made_judgement(), {}), Not(HasSubstr(" \n")));
}

TEST(TheWholeText, JudgesKindsApartAndSaysSo) {
  Judgement second = made_judgement();
  second.kind = *trials::find_reading_kind("card_bite");

  const std::string text = judgements_text({made_judgement(), second}, HowMuch::everything, {});

  EXPECT_THAT(
      text,
      AllOf(
          HasSubstr("Thread push reading, gf"), HasSubstr("Card bite"), HasSubstr("judged apart")));
}

// Blade, edge and "what was cut" stay; only the count has another word.
TEST(TheWholeText, SaysTheWordOfWhatIsCounted) {
  Judgement judgement = made_judgement();
  judgement.counted = {.one = "stroke", .many = "strokes"};
  judgement.comparisons[0].at = {.what = verdicts::ComparedAt::common_reading, .reading = 400};

  const std::string text = whole(judgement, {.width = 120});

  EXPECT_THAT(text, HasSubstr("times as many strokes as"));
  EXPECT_THAT(text, HasSubstr("against strokes (lower is keener)"));
  EXPECT_THAT(text, HasSubstr("In strokes, with 95 % intervals."));
  EXPECT_THAT(text, Not(HasSubstr(" cuts")));
}

TEST(TheWholeText, GivesNoMetresWhereATimeIsCounted) {
  Judgement judgement = made_judgement();
  judgement.counted = {.one = "minute", .many = "minutes", .is_measured = true};
  judgement.arms[judgement.comparisons[0].a].arm.method.cut_length_mm = 100;

  const std::string text = whole(judgement, {.width = 120});

  EXPECT_THAT(text, HasSubstr(" minutes against "));
  EXPECT_THAT(text, Not(HasSubstr(" m) against")));
}

TEST(TheWholeText, ShowsNoDrawingOfAFitThatIsNotUsable) {
  Judgement judgement = made_judgement();
  judgement.fit.usable = false;
  judgement.comparisons.clear();

  EXPECT_THAT(whole(judgement, {}),
              AllOf(HasSubstr("Fit: not usable"), Not(HasSubstr("against cuts"))));
}

TEST(RatioDrawing, MarksOneAndTheWorthItBand) {
  const std::string drawing = ratios_drawn(made_judgement(), {.width = 60, .unicode = false});

  EXPECT_THAT(drawing, HasSubstr("  C against A    .......|.......      -=====o=====-      3.1\n"));
}

TEST(RatioDrawing, ShowsWhereAnIntervalLeavesTheAxis) {
  Judgement judgement = made_judgement();
  judgement.comparisons[0].simultaneous.hi95 = 5000;
  judgement.comparisons[0].ratio.hi95 = 4000;

  EXPECT_THAT(ratios_drawn(judgement, {.unicode = false}), HasSubstr("=>"));
}

TEST(RatioDrawing, SaysWhatItsNumbersStandForWhereNamesAreLong) {
  Judgement judgement = made_judgement();
  for (auto& arm : judgement.arms) arm.arm.blade += " of the long knives";

  EXPECT_THAT(ratios_drawn(judgement, {}), HasSubstr("\n  3: C of the long knives\n"));
}

TEST(RatioDrawing, SpeaksOfAllPairsAtOnceOnlyWhereThereAreSeveral) {
  Judgement judgement = made_judgement();
  EXPECT_THAT(ratios_drawn(judgement, {}), HasSubstr("at once"));

  for (auto& comparison : judgement.comparisons) comparison.family_size = 1;

  EXPECT_THAT(ratios_drawn(judgement, {}), Not(HasSubstr("at once")));
}

TEST(RatioDrawing, IsEmptyWithoutComparisons) {
  EXPECT_THAT(ratios_drawn(one_arm(), {}), IsEmpty());
}

TEST(CurveDrawing, LabelsEachLineWhereItEnds) {
  const std::string drawing = curves_drawn(one_arm(), {.width = 60, .unicode = false});

  EXPECT_THAT(drawing, HasSubstr(" A\n"));
  EXPECT_THAT(drawing, HasSubstr("thread push reading, gf, against cuts"));
}

TEST(CurveDrawing, IsEmptyWithoutCurves) {
  Judgement judgement = one_arm();
  judgement.arms[0].curve.clear();

  EXPECT_THAT(curves_drawn(judgement, {}), IsEmpty());
}

TEST(CurveDrawing, TakesACurveThatBeginsAtZeroCutsAndStaysFlat) {
  Judgement judgement = one_arm();
  for (auto& point : judgement.arms[0].curve) point.reading = verdicts::testing::around(104, 0.01);
  judgement.arms[0].curve.front().cuts = 0;

  EXPECT_THAT(curves_drawn(judgement, {}), HasSubstr("A\n"));
}

TEST(ArmsTable, GivesCutsWithTheirInterval) {
  EXPECT_THAT(arms_table(made_judgement(), {.unicode = false}), HasSubstr("108 (88-132)"));
}

TEST(ArmsTable, MarksWhatLiesBeyondWhatWasCut) {
  Judgement judgement = made_judgement();
  judgement.arms[2].half_keenness->beyond_what_was_cut = true;

  EXPECT_THAT(arms_table(judgement, {.unicode = false}),
              AllOf(HasSubstr("108* (88-132)"), HasSubstr("\n* beyond what was cut")));
  EXPECT_THAT(arms_table(made_judgement(), {}), Not(HasSubstr("*")));
}

TEST(ArmsTable, SaysAtLeastWhereNoRunGotThereAndItIsFar) {
  Judgement judgement = made_judgement();
  judgement.arms[2].longest_run_cuts = 40;
  judgement.arms[2].half_keenness->beyond_what_was_cut = true;
  judgement.arms[2].half_keenness->runs_that_reached = 0;

  EXPECT_THAT(arms_table(judgement, {.unicode = false}), HasSubstr("  at least 88*  "));
}

TEST(ArmsTable, SaysWhatItLeavesOutForWantOfWidth) {
  EXPECT_THAT(arms_table(made_judgement(), {.width = 60}), HasSubstr("Left out for want of width"));
}

TEST(ArmsTable, IsEmptyWithoutArms) {
  Judgement judgement = one_arm();
  judgement.arms.clear();

  EXPECT_THAT(arms_table(judgement, {}), IsEmpty());
}

TEST(Caveats, SayOnceWhatIsTheSameForAllPairs) {
  const std::string text = what_else_differed(made_judgement(), {});

  EXPECT_EQ(text.find("hardness"), text.rfind("hardness"));
  EXPECT_THAT(text, HasSubstr("Matched in every pair: bevel angle."));
}

TEST(Caveats, NameWhatDiffersForItsPair) {
  Judgement judgement = made_judgement();
  judgement.comparisons[0].also_differs.push_back(
      {.what = "steel", .matching = verdicts::Matching::differs, .a = "X153CrMoV12", .b = "C75S"});

  EXPECT_THAT(what_else_differed(judgement, {}),
              HasSubstr("C against A: differs in steel (X153CrMoV12 against C75S)."));
}

TEST(Caveats, SayOnceWhatDiffersAlikeInTwoMedia) {
  Judgement judgement = made_judgement();
  const verdicts::AlsoDiffers steel{
      .what = "steel", .matching = verdicts::Matching::differs, .a = "X153CrMoV12", .b = "C75S"};
  verdicts::AlsoDiffers turned = steel;
  std::swap(turned.a, turned.b);
  judgement.comparisons[0].also_differs.push_back(steel);
  judgement.comparisons[3].also_differs.push_back(turned);
  std::swap(judgement.comparisons[3].a, judgement.comparisons[3].b);

  const std::string text = what_else_differed(judgement, {});

  EXPECT_EQ(text.find("differs in"), text.rfind("differs in"));
}

TEST(Caveats, GatherWhatWasNoticedInOneRunAndCountWhatIsAlikeInMany) {
  Judgement judgement = made_judgement();
  for (auto& run : judgement.runs) run.remarks = {"stopped at the cap"};
  judgement.runs[0].remarks.insert(judgement.runs[0].remarks.begin(), {"twisted", "paused"});

  EXPECT_THAT(runs_and_remarks(judgement, {}),
              AllOf(HasSubstr("Run 1 of A on new matting: twisted; paused\n"),
                    HasSubstr("6 runs: stopped at the cap\n")));
}

TEST(Caveats, NameRunsThatWereNotUsedAndCountStruckReadings) {
  Judgement judgement = made_judgement();
  judgement.runs[1].not_used_because = "it was voided: burr left on.";
  judgement.runs[0].readings_struck = 2;

  EXPECT_THAT(runs_and_remarks(judgement, {}),
              AllOf(HasSubstr("Run 1 of B on new matting is not used: it was voided"),
                    HasSubstr("2 readings are struck out")));
}

TEST(Caveats, SayWhatLeavingOutDoubtfulReadingsWouldChange) {
  Judgement judgement = made_judgement();
  judgement.runs[0].readings_doubtful = 1;
  for (verdicts::Comparison& pair : judgement.comparisons) {
    pair.without_doubtful = verdicts::SecondOpinion{};
  }

  EXPECT_THAT(runs_and_remarks(judgement, {.width = 200}),
              HasSubstr("1 reading is marked as doubtful, and used all the same. Left out, no "
                        "verdict would change."));

  judgement.comparisons[0].without_doubtful->agrees = false;

  EXPECT_THAT(runs_and_remarks(judgement, {.width = 200}),
              AllOf(HasSubstr("Left out: "), HasSubstr("would read: not settled")));
}

TEST(Caveats, NameThePairsOfWhichOnlyDoubtfulReadingsTell) {
  Judgement judgement = made_judgement();
  judgement.runs[0].readings_doubtful = 3;
  judgement.comparisons[0].quick = verdicts::SecondOpinion{};

  EXPECT_THAT(runs_and_remarks(judgement, {.width = 200}), HasSubstr("cannot be compared."));
}

TEST(Caveats, WarnWhereTheCurveMissesTheReadings) {
  Judgement judgement = made_judgement();
  EXPECT_THAT(curve_warnings(judgement, {}), IsEmpty());

  judgement.curve_check = {
      .passed = false, .smallest_p = 0.001, .where = {"A between 4 and 9 cuts"}};

  EXPECT_THAT(curve_warnings(judgement, {}), HasSubstr("A between 4 and 9 cuts"));
  EXPECT_THAT(curve_warnings(judgement, {.width = 120}), HasSubstr("predictive p 0.001)"));
}

TEST(Caveats, SayWhatTheReadingsCannotSay) {
  Judgement judgement = made_judgement();
  judgement.cannot_say = {"Nothing about the steels."};

  EXPECT_THAT(what_cannot_be_said(judgement, {}), HasSubstr("Nothing about the steels."));
}

TEST(Caveats, CutLongListsShortAndSaySo) {
  Judgement judgement = made_judgement();
  judgement.cannot_say.assign(40, "Something.");

  EXPECT_THAT(what_cannot_be_said(judgement, {}), HasSubstr("and 28 more"));
}

TEST(Caveats, EndWithTheFit) {
  EXPECT_THAT(fit_line(made_judgement(), {}), AllOf(HasSubstr("Fit: usable"), HasSubstr("Seed 1")));
}

}  // namespace
}  // namespace keenfall::cli
