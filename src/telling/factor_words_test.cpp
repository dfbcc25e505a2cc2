#include "telling/factor_words.h"

#include "telling/said_test.h"
#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <optional>
#include <string>

namespace keenfall::telling {
namespace {

using ::testing::HasSubstr;
using testing::said;
using verdicts::Verdict;
using verdicts::testing::around;
using verdicts::testing::made_judgement;

TEST(FactorWords, GivesEachFactorsRatioAgainstItsFirstLevel) {
  verdicts::Judgement judgement = made_judgement();
  judgement.factors = verdicts::testing::made_factors(around(0.8, 0.3));
  const std::string text = said(factor_section(judgement));

  EXPECT_THAT(text,
              HasSubstr("bevel angle, 20° per side against 15° per side: 0.80 times as many cuts"));
  EXPECT_THAT(text, HasSubstr("finish (along with the apex angle), F800 against F400"));
}

TEST(FactorWords, IsLeftToTheMediaWhereOnlyBladesAndMediaAreCrossed) {
  verdicts::Judgement judgement = made_judgement();
  judgement.factors = verdicts::testing::made_factors(around(0.8, 0.3));
  judgement.factors->factors[0].what = "blade";
  judgement.factors->factors[1].what = "medium";

  EXPECT_EQ(factor_section(judgement), std::nullopt);
}

TEST(FactorWords, TellAllEffectsAndRemarksHoweverMany) {
  verdicts::Judgement judgement = made_judgement();
  judgement.factors = verdicts::testing::made_factors(around(0.8, 0.3));
  judgement.factors->effects.resize(30, judgement.factors->effects.front());
  judgement.factors->remarks = {"Finish and angle changed together."};

  const std::optional<Section> section = factor_section(judgement);

  EXPECT_EQ(section->items.size(), 31U);
  EXPECT_EQ(said(section->remarks), "Finish and angle changed together.\n");
}

TEST(FactorWords, SayOfAnInteractionThatFactorsWorkOnEachOtherAndByHowMuch) {
  verdicts::Judgement judgement = made_judgement();
  judgement.factors = verdicts::testing::made_factors(around(0.8, 0.3));
  const auto told_as = [&](Verdict verdict) {
    judgement.factors->interactions.front().verdict = verdict;
    const Sentence sentence = factor_section(judgement)->items.back();
    EXPECT_EQ(text_of({.words = {sentence.words.front()}}),
              "bevel angle, 20° per side against 15° per side: that ratio is 0.80 times as large "
              "at finish F800 as at F400 (95 % interval 0.59 to 1.1): ");
    return sentence.words[1];
  };
  const auto settled = [](const char* words) { return Words{words, Tone::settled}; };
  const Words matters = settled("they work on each other, by enough to matter");
  const Words works = settled("they work on each other");
  const Words little = settled("they work on each other, but too little to matter");

  EXPECT_EQ(told_as(Verdict::longer_and_worth_having), matters);
  EXPECT_EQ(told_as(Verdict::shorter_by_enough_to_matter), matters);
  EXPECT_EQ(told_as(Verdict::longer), works);
  EXPECT_EQ(told_as(Verdict::shorter), works);
  EXPECT_EQ(told_as(Verdict::longer_but_too_little_to_matter), little);
  EXPECT_EQ(told_as(Verdict::shorter_but_too_little_to_matter), little);
  EXPECT_EQ(told_as(Verdict::practically_the_same), settled("practically the same at both"));
  EXPECT_EQ(told_as(Verdict::not_settled), (Words{"not settled", Tone::not_settled}));
}

TEST(FactorWords, CountTheArmsThatAreNotInTheTable) {
  verdicts::Judgement judgement = made_judgement();
  judgement.factors = verdicts::testing::made_factors(around(0.8, 0.3));
  judgement.factors->arms_left_out = {4};
  EXPECT_EQ(said(factor_section(judgement)->remarks),
            "1 of 6 arms is not part of the crossed table.\n");

  judgement.factors->arms_left_out = {4, 5};

  EXPECT_EQ(said(factor_section(judgement)->remarks),
            "2 of 6 arms are not part of the crossed table.\n");
}

}  // namespace
}  // namespace keenfall::telling
