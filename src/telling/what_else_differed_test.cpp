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

}  // namespace
}  // namespace keenfall::telling
