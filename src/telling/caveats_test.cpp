#include "telling/caveats.h"

#include "telling/said_test.h"
#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <optional>
#include <string>

namespace keenfall::telling {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using testing::said;
using ::testing::StartsWith;
using verdicts::Judgement;
using verdicts::testing::made_judgement;

TEST(Caveats, WarnWhereTheCurveMissesTheReadings) {
  Judgement judgement = made_judgement();
  EXPECT_EQ(curve_warnings(judgement), std::nullopt);

  judgement.curve_check = {
      .passed = false, .smallest_p = 0.001, .where = {"A between 4 and 9 cuts"}};

  EXPECT_THAT(said(curve_warnings(judgement)), HasSubstr("A between 4 and 9 cuts"));
  EXPECT_THAT(said(curve_warnings(judgement)), HasSubstr("by more than chance (smallest p 0.001)"));
}

TEST(Caveats, SayWhatTheReadingsCannotSay) {
  Judgement judgement = made_judgement();
  judgement.cannot_say = {"Nothing about the steels."};

  EXPECT_THAT(said(what_cannot_be_said(judgement)), HasSubstr("Nothing about the steels."));
}

TEST(Caveats, EndWithTheFit) {
  EXPECT_THAT(text_of(the_fit(made_judgement()).lead),
              AllOf(HasSubstr("Fit: usable"), HasSubstr("Seed 1")));
}

TEST(Caveats, HoldLongListsWhole) {
  Judgement judgement = made_judgement();
  judgement.cannot_say.assign(40, "Something.");

  EXPECT_EQ(what_cannot_be_said(judgement)->items.size(), 40U);
}

TEST(Caveats, SayThatASecondCalculationAgrees) {
  Judgement judgement = made_judgement();
  EXPECT_EQ(second_opinion(judgement), std::nullopt);

  judgement.comparisons[0].quick = verdicts::SecondOpinion{};
  EXPECT_EQ(said(second_opinion(judgement)), "A second, quicker calculation agrees.\n");

  judgement.comparisons[1].quick = verdicts::SecondOpinion{};
  EXPECT_EQ(said(second_opinion(judgement)), "A second, quicker calculation agrees on all 2.\n");
}

TEST(Caveats, NameThePairsOnWhichASecondCalculationDoesNotAgree) {
  Judgement judgement = made_judgement();
  for (verdicts::Comparison& pair : judgement.comparisons) pair.quick = verdicts::SecondOpinion{};
  judgement.comparisons[0].quick->agrees = false;

  EXPECT_THAT(
      said(second_opinion(judgement)),
      AllOf(StartsWith("A second, quicker calculation reads otherwise for 1 of 6; take such "
                       "a verdict as near a boundary:\n"),
            HasSubstr("C against A on new matting: not settled, by ")));
}

TEST(Caveats, TellHowTheTableWasReadWhereThatIsKnown) {
  Judgement judgement = made_judgement();
  EXPECT_EQ(how_it_was_read(judgement), std::nullopt);

  judgement.taken_as = {"Decimals are written with a comma."};

  EXPECT_EQ(said(how_it_was_read(judgement)),
            "How the table was read\nDecimals are written with a comma.\n");
}

TEST(Caveats, GiveNoFigureOfAVerySmallP) {
  Judgement judgement = made_judgement();
  judgement.curve_check = {.passed = false, .smallest_p = 0.0004, .where = {"A at 9 cuts"}};

  EXPECT_THAT(said(curve_warnings(judgement)), HasSubstr("(smallest p below 0.001)"));
}

TEST(Caveats, SayThatTheOnlySecondCalculationReadsOtherwise) {
  Judgement judgement = made_judgement();
  judgement.comparisons[0].quick = verdicts::SecondOpinion{.agrees = false};

  EXPECT_THAT(said(second_opinion(judgement)),
              StartsWith("A second, quicker calculation reads otherwise; take such a verdict as "
                         "near a boundary:\nC against A on new matting: not settled, by "));
}

TEST(Caveats, SayWhetherTheFitIsUsableAndOfWhichParts) {
  Judgement judgement = made_judgement();
  EXPECT_THAT(text_of(the_fit(judgement).lead),
              StartsWith("Fit: usable. Model default: robust readings and blocks. Seed 1, 4000 "));

  judgement.fit.usable = false;
  judgement.fit.model_parts.clear();

  EXPECT_THAT(
      text_of(the_fit(judgement).lead),
      StartsWith("Fit: not usable. Model default. Seed 1, 4000 draws, largest R-hat 1.002"));
}

TEST(Caveats, SayThatAQuickFitDoesNotCount) {
  Judgement judgement = made_judgement();
  judgement.fit.model = "quick";
  EXPECT_EQ(text_of(the_fit(judgement).lead),
            "By the quick calculation, a first look that is not counted: robust readings and "
            "blocks. 4000 draws, without a sampler, 1.75 s of processor time. The full calculation "
            "is the one that counts.");

  judgement.fit.model_parts.clear();

  EXPECT_THAT(text_of(the_fit(judgement).lead), HasSubstr("not counted. 4000 draws"));
}

}  // namespace
}  // namespace keenfall::telling
