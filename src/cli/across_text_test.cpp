// What is said across comparisons: media, factors, runs by themselves.
#include "cli/across_media_text.h"
#include "cli/factor_text.h"
#include "cli/run_by_run_text.h"
#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace keenfall::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using verdicts::testing::around;
using verdicts::testing::made_judgement;

std::string on_one_line(std::string text) {
  std::ranges::replace(text, '\n', ' ');
  std::string joined;
  for (const char c : text) {
    if (c != ' ' || joined.empty() || joined.back() != ' ') joined += c;
  }
  return joined;
}

TEST(AcrossMediaText, SaysThatTheGapClosesAndTheChanceOfOneOrder) {
  const std::string said = on_one_line(across_media_sentences(made_judgement(), {}));

  EXPECT_THAT(
      said,
      HasSubstr("The gap between the blades closes on uplifted matting: there they lie 0.17 "
                "times as far apart as on new matting"));
  EXPECT_THAT(said,
              HasSubstr("The chance that the 3 blades stand in one order on new matting and on "
                        "uplifted matting is 41 %."));
}

TEST(AcrossMediaText, SaysNotSettledWhereTheGapMayBeAsWide) {
  verdicts::Judgement judgement = made_judgement();
  judgement.media->pairs[0].spread_ratio = around(1.3, 0.6);

  EXPECT_THAT(on_one_line(across_media_sentences(judgement, {})),
              HasSubstr("Whether the gap between the blades is narrower on new matting than on "
                        "uplifted matting is not settled: 0.77 times as wide"));
}

TEST(AcrossMediaText, SpeaksOfTheAdvantageWhereThereAreTwoBlades) {
  verdicts::Judgement judgement = made_judgement();
  for (verdicts::MediumOfTable& medium : judgement.media->media)
    medium.arms.erase(medium.arms.begin() + 1);
  judgement.media->interactions[0].a = 1;

  const std::string said = on_one_line(across_media_sentences(judgement, {}));
  EXPECT_THAT(said,
              HasSubstr("C against A: the ratio on new matting is 2.9 times that on uplifted "
                        "matting"));
  EXPECT_THAT(said, Not(HasSubstr("gap")));
}

TEST(AcrossMediaText, ListsTheOrdersInTheSection) {
  EXPECT_THAT(on_one_line(across_media_section(made_judgement(), {})),
              HasSubstr("Most probable order on uplifted matting: C, B, A (chance 42 %)."));
}

TEST(AcrossMediaText, IsEmptyForOneMedium) {
  verdicts::Judgement judgement = made_judgement();
  judgement.media.reset();

  EXPECT_THAT(across_media_sentences(judgement, {}), IsEmpty());
  EXPECT_THAT(across_media_section(judgement, {}), IsEmpty());
}

TEST(FactorText, GivesEachFactorsRatioAgainstItsFirstLevel) {
  verdicts::Judgement judgement = made_judgement();
  judgement.factors = verdicts::testing::made_factors(around(0.8, 0.3));
  const std::string said = on_one_line(factor_section(judgement, {.unicode = true}));

  EXPECT_THAT(said,
              HasSubstr("bevel angle, 20° per side against 15° per side: 0.80 times as many cuts"));
  EXPECT_THAT(said, HasSubstr("finish (along with the apex angle), F800 against F400"));
}

TEST(FactorText, IsLeftToTheMediaWhereOnlyBladesAndMediaAreCrossed) {
  verdicts::Judgement judgement = made_judgement();
  judgement.factors = verdicts::testing::made_factors(around(0.8, 0.3));
  judgement.factors->factors[0].what = "blade";
  judgement.factors->factors[1].what = "medium";

  EXPECT_THAT(factor_section(judgement, {}), IsEmpty());
}

TEST(RunByRunText, SaysItDecidesNothing) {
  const std::string said = on_one_line(run_by_run_section(made_judgement(), {}));

  EXPECT_THAT(said, HasSubstr("it decides nothing"));
  EXPECT_THAT(said,
              HasSubstr("On new matting, C against A: 3.0 times (6 and 6 runs), p = 0.0022; ranked "
                        "within 6 blocks, p = 0.031."));
}

}  // namespace
}  // namespace keenfall::cli
