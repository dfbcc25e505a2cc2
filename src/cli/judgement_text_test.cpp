#include "cli/judgement_text.h"

#include "cli/curve_drawing.h"
#include "cli/interval_drawing.h"
#include "cli/widest_line.h"
#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

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

TEST(TheWholeText, ListsLooksAtRunsWholeOrNotAtAll) {
  Judgement judgement = made_judgement();
  judgement.comparisons.resize(18, judgement.comparisons.front());

  EXPECT_THAT(whole(made_judgement(), {}), HasSubstr("Each run by itself"));
  EXPECT_THAT(whole(judgement, {}), Not(HasSubstr("Each run by itself")));
}

TEST(TheWholeText, SetsTheFitBelowTheSecondOpinion) {
  Judgement judgement = made_judgement();
  judgement.comparisons.front().quick = verdicts::SecondOpinion{};

  EXPECT_THAT(whole(judgement, {}), HasSubstr("quicker calculation agrees.\nFit: usable."));
  EXPECT_THAT(whole(made_judgement(), {}), HasSubstr("\n\nFit: usable."));
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

}  // namespace
}  // namespace keenfall::cli
