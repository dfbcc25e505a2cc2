#include "telling/headline.h"

#include "verdicts/made_judgement_test.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::telling {
namespace {

using verdicts::Judgement;
using verdicts::Verdict;
using verdicts::testing::made_judgement;

std::vector<Sentence> headline_of(const Judgement& judgement) {
  return headline(std::vector<Judgement>{judgement});
}

TEST(Headline, IsTheLargestRatioWorthHavingAndHowTheOthersCameOut) {
  const std::vector<Sentence> said = headline_of(made_judgement());

  ASSERT_EQ(said.size(), 2U);
  EXPECT_TRUE(text_of(said[0]).starts_with("On new matting, C stays keen 3.1 times as long as A"))
      << text_of(said[0]);
  EXPECT_TRUE(text_of(said[0]).ends_with("longer, and worth having.")) << text_of(said[0]);
  EXPECT_TRUE(text_of(said[1]).find(" more comparisons: ") != std::string::npos)
      << text_of(said[1]);
}

TEST(Headline, KeepsTheToneOfItsVerdict) {
  Judgement judgement = made_judgement();
  for (auto& pair : judgement.comparisons) pair.verdict = Verdict::not_settled;

  const Sentence first = headline_of(judgement).front();

  EXPECT_EQ(first.words[2].tone, Tone::not_settled);
}

TEST(Headline, StandsAloneWhereThereIsOneComparison) {
  Judgement judgement = made_judgement();
  judgement.comparisons.resize(1);

  EXPECT_EQ(headline_of(judgement).size(), 1U);
}

TEST(Headline, SaysWhyThereIsNoAnswer) {
  Judgement judgement = made_judgement();
  judgement.fit.usable = false;
  judgement.comparisons.clear();

  const std::vector<Sentence> said = headline_of(judgement);

  ASSERT_EQ(said.size(), 1U);
  EXPECT_EQ(text_of(said.front()), "No verdict: the fit is not usable.");
}

TEST(Headline, SaysHowLongTheOnlyArmLasts) {
  Judgement judgement = made_judgement();
  judgement.arms.resize(1);
  judgement.comparisons.clear();
  judgement.media.reset();
  judgement.factors.reset();

  const std::vector<Sentence> said = headline_of(judgement);

  ASSERT_EQ(said.size(), 2U);
  EXPECT_TRUE(text_of(said[0]).starts_with("On new matting, A stays keen for")) << text_of(said[0]);
}

TEST(Headline, NamesTheVerdictOfTheOnlyOtherComparison) {
  Judgement judgement = made_judgement();
  judgement.comparisons.resize(2);
  judgement.comparisons[1].verdict = Verdict::not_settled;

  EXPECT_EQ(text_of(headline_of(judgement).back()), "1 more comparison: not settled.");
}

TEST(Headline, CountsTheVerdictsOfTheOthersByHowMuchTheyTell) {
  EXPECT_EQ(text_of(headline_of(made_judgement()).back()),
            "5 more comparisons: 1 longer, and worth having; 1 longer; 2 practically the same; 1 "
            "not settled.");
}

}  // namespace
}  // namespace keenfall::telling
