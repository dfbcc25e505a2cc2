#include "telling/what_else_differed.h"

#include "telling/said_test.h"
#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <utility>

namespace keenfall::telling {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using testing::said;
using verdicts::Judgement;
using verdicts::testing::made_judgement;

TEST(WhatElseDiffered, SaysOnceWhatIsTheSameForAllPairs) {
  const std::string text = said(what_else_differed(made_judgement()));

  EXPECT_EQ(text.find("hardness"), text.rfind("hardness"));
  EXPECT_THAT(text, HasSubstr("Matched in every pair: bevel angle."));
}

TEST(WhatElseDiffered, NamesWhatDiffersForItsPair) {
  Judgement judgement = made_judgement();
  judgement.comparisons[0].also_differs.push_back(
      {.what = "steel", .matching = verdicts::Matching::differs, .a = "X153CrMoV12", .b = "C75S"});

  EXPECT_THAT(said(what_else_differed(judgement)),
              HasSubstr("C against A: differs in steel (X153CrMoV12 against C75S)."));
}

TEST(WhatElseDiffered, CallsAFinishThatWasWrittenDownNotUnrecorded) {
  Judgement judgement = made_judgement();
  for (verdicts::Comparison& comparison : judgement.comparisons) {
    comparison.also_differs.push_back({.what = "finish",
                                       .matching = verdicts::Matching::not_recorded,
                                       .a = "1000 (grit system unknown)",
                                       .b = "1000 (grit system unknown)"});
  }

  EXPECT_THAT(said(what_else_differed(judgement)), HasSubstr("the grit system of the finish"));
}

TEST(WhatElseDiffered, SaysOnceWhatDiffersAlikeInTwoMedia) {
  Judgement judgement = made_judgement();
  const verdicts::AlsoDiffers steel{
      .what = "steel", .matching = verdicts::Matching::differs, .a = "X153CrMoV12", .b = "C75S"};
  verdicts::AlsoDiffers turned = steel;
  std::swap(turned.a, turned.b);
  judgement.comparisons[0].also_differs.push_back(steel);
  judgement.comparisons[3].also_differs.push_back(turned);
  std::swap(judgement.comparisons[3].a, judgement.comparisons[3].b);

  const std::string text = said(what_else_differed(judgement));

  EXPECT_EQ(text.find("differs in"), text.rfind("differs in"));
}

TEST(WhatElseDiffered, TellsOfCircumstancesOnlyWhereTheirEffectIsClear) {
  Judgement judgement = made_judgement();
  EXPECT_THAT(said(what_else_differed(judgement)), Not(HasSubstr("last run of the trial")));

  judgement.covariates[1].ratio = verdicts::testing::around(1.4, 0.1);

  EXPECT_THAT(said(what_else_differed(judgement)),
              HasSubstr("The last run of the trial lasted 1.4 (1.3 to 1.5) times as long as the "
                        "first would have; allowed for."));
}

TEST(WhatElseDiffered, IsAbsentWithoutComparisons) {
  Judgement judgement = made_judgement();
  judgement.comparisons.clear();

  EXPECT_EQ(what_else_differed(judgement), std::nullopt);
}

TEST(WhatElseDiffered, NamesAllThatDiffersIsUnknownAndIsMatchedInAPairOfItsOwn) {
  Judgement judgement = made_judgement();
  judgement.comparisons[0].also_differs = {
      {.what = "hardness", .matching = verdicts::Matching::differs, .a = "61 HRC", .b = "58 HRC"},
      {.what = "finish", .matching = verdicts::Matching::matched, .a = "F400", .b = "F400"},
      {.what = "who cut"},
      {.what = "thread lot", .matching = verdicts::Matching::differs, .a = "2", .b = "1"}};

  EXPECT_THAT(said(what_else_differed(judgement)),
              HasSubstr("\nC against A: differs in hardness (61 HRC against 58 HRC), thread lot (2 "
                        "against 1); not recorded: who cut; matched: finish.\n"));
}

TEST(WhatElseDiffered, SaysForEachPairWhatIsNotTheSameForAll) {
  Judgement judgement = made_judgement();
  judgement.comparisons.resize(3);
  judgement.comparisons[0].also_differs.pop_back();
  judgement.comparisons[1].also_differs = {{.what = "finish"}};

  const std::string text = said(what_else_differed(judgement));

  EXPECT_THAT(text, Not(HasSubstr("in every pair")));
  EXPECT_THAT(text, Not(HasSubstr("for any pair")));
  EXPECT_THAT(text, HasSubstr("\nC against A: matched: bevel angle.\n"));
  EXPECT_THAT(text, HasSubstr("\nC against B: not recorded: finish.\n"));
  EXPECT_THAT(text, HasSubstr("\nB against A: not recorded: hardness; matched: bevel angle.\n"));
}

TEST(WhatElseDiffered, TellsOfUnequalStartsWhereTheirEffectIsClear) {
  Judgement judgement = made_judgement();
  judgement.covariates[0].ratio = verdicts::testing::around(0.8, 0.1);

  EXPECT_THAT(said(what_else_differed(judgement)),
              HasSubstr("A run that starts 10 % blunter than its edge usually does takes 0.80 "
                        "(0.72 to 0.88) times as many cuts to half keenness; allowed for.\n"));
}

TEST(WhatElseDiffered, IsAbsentWhereNothingIsKnown) {
  Judgement judgement = made_judgement();
  for (verdicts::Comparison& comparison : judgement.comparisons) comparison.also_differs.clear();

  EXPECT_EQ(what_else_differed(judgement), std::nullopt);
}

}  // namespace
}  // namespace keenfall::telling
