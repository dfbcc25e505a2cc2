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

}  // namespace
}  // namespace keenfall::telling
