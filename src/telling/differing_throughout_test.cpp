#include "telling/differing_throughout.h"

#include "telling/said_test.h"
#include "telling/what_else_differed.h"
#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <string>

namespace keenfall::telling {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using testing::said;
using verdicts::Judgement;

// Three blades in two media, each pair recorded as differing in hardness.
Judgement hardness_differs() {
  std::map<std::string, std::string> hardness = {
      {"A", "58 HRC"}, {"B", "58.5 HRC"}, {"C", "61 HRC"}};
  Judgement judgement = verdicts::testing::made_judgement();
  for (verdicts::Comparison& comparison : judgement.comparisons) {
    comparison.also_differs = {{.what = "hardness",
                                .matching = verdicts::Matching::differs,
                                .a = hardness[judgement.arms[comparison.a].arm.blade],
                                .b = hardness[judgement.arms[comparison.b].arm.blade]}};
  }
  return judgement;
}

TEST(WhatDiffersInEveryPair, IsSaidInOneLineWithTheUnitOnce) {
  EXPECT_THAT(said(what_else_differed(hardness_differs())),
              HasSubstr("\nHardness differs in every pair (A 58, B 58.5, C 61 HRC).\n"));
}

TEST(WhatDiffersInEveryPair, IsNotSaidAgainForEachPair) {
  EXPECT_THAT(said(what_else_differed(hardness_differs())), Not(HasSubstr("against")));
}

TEST(WhatDiffersInEveryPair, KeepsUnitsThatAreNotShared) {
  Judgement judgement = hardness_differs();
  for (verdicts::Comparison& comparison : judgement.comparisons) {
    for (verdicts::AlsoDiffers& thing : comparison.also_differs) {
      if (thing.a == "61 HRC") thing.a = "720 HV";
    }
  }

  EXPECT_THAT(said(what_else_differed(judgement)), HasSubstr("(A 58 HRC, B 58.5 HRC, C 720 HV)"));
}

TEST(WhatDiffersInEveryPair, IsLeftToThePairsWhereABladeHasTwoValues) {
  Judgement judgement = hardness_differs();
  judgement.comparisons.front().also_differs.front().a = "60 HRC";

  EXPECT_THAT(differing_throughout(judgement, names_of(judgement)), IsEmpty());
}

TEST(WhatDiffersInEveryPair, IsLeftToThePairWhereThereIsOnlyOne) {
  Judgement judgement = hardness_differs();
  judgement.comparisons.resize(1);

  EXPECT_THAT(differing_throughout(judgement, names_of(judgement)), IsEmpty());
}

TEST(WhatDiffersInEveryPair, IsSaidOfTwoPairsAlready) {
  Judgement judgement = hardness_differs();
  judgement.comparisons.resize(2);

  EXPECT_THAT(said(what_else_differed(judgement)),
              HasSubstr("\nHardness differs in every pair (A 58, B 58.5, C 61 HRC).\n"));
}

TEST(WhatDiffersInEveryPair, IsLeftToThePairsWhereTheShorterLastingBladeHasTwoValues) {
  Judgement judgement = hardness_differs();
  judgement.comparisons.front().also_differs.front().b = "57 HRC";

  EXPECT_THAT(differing_throughout(judgement, names_of(judgement)), IsEmpty());
}

TEST(WhatDiffersInEveryPair, KeepsListsOfValuesAndValuesWithoutAUnitWhole) {
  Judgement judgement = hardness_differs();
  for (verdicts::Comparison& comparison : judgement.comparisons) {
    for (std::string* value :
         {&comparison.also_differs.front().a, &comparison.also_differs.front().b}) {
      if (*value == "58 HRC") *value = "57 HRC, 58 HRC";
      if (*value == "61 HRC") *value = "hard";
    }
  }

  EXPECT_THAT(said(what_else_differed(judgement)),
              HasSubstr("(A 57 HRC, 58 HRC, B 58.5 HRC, C hard)"));
}

TEST(WhatDiffersInEveryPair, SaysNothingOfAnEdgeThatIsComparedWithNone) {
  Judgement judgement = hardness_differs();
  judgement.arms.push_back(verdicts::testing::made_arm("D", "cardboard", 40));

  EXPECT_THAT(said(what_else_differed(judgement)), HasSubstr("(A 58, B 58.5, C 61 HRC)"));
}

}  // namespace
}  // namespace keenfall::telling
