#include "telling/run_by_run_words.h"

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
using verdicts::testing::made_judgement;

TEST(RunByRunWords, SaysItDecidesNothing) {
  const std::string text = said(run_by_run_section(made_judgement()));

  EXPECT_THAT(text, HasSubstr("it decides nothing"));
  EXPECT_THAT(text,
              HasSubstr("On new matting, C against A: 3.0 times (6 and 6 runs), p = 0.0022; ranked "
                        "within 6 blocks, p = 0.031."));
}

TEST(RunByRunWords, SayHowLowPCanGoWhereRunsAreFew) {
  verdicts::Judgement judgement = made_judgement();
  judgement.comparisons.front().run_by_run->smallest_possible_p = 0.1;

  EXPECT_THAT(said(run_by_run_section(judgement)),
              HasSubstr("With so few runs p cannot go below 0.10."));
}

TEST(RunByRunWords, AreNotToBeCutShort) {
  EXPECT_EQ(run_by_run_section(made_judgement())->when_long, WhenLong::left_out);
}

TEST(RunByRunWords, AreAbsentWhereNoComparisonHasSuchALook) {
  verdicts::Judgement judgement = made_judgement();
  judgement.comparisons.front().run_by_run.reset();

  EXPECT_EQ(run_by_run_section(judgement), std::nullopt);
}

TEST(RunByRunWords, CountRunsLeftOutAndGiveNoFigureOfAVerySmallChance) {
  verdicts::Judgement judgement = made_judgement();
  verdicts::RunByRun& found = *judgement.comparisons.front().run_by_run;
  found.runs_left_out = 2;
  found.p = 0.00002;

  EXPECT_THAT(said(run_by_run_section(judgement)),
              HasSubstr("3.0 times (6 and 6 runs, 2 left out), p under 0.0001; ranked within 6"));
}

// Three blocks have 8 ways round: 2 of 8 is the least there is.
TEST(RunByRunWords, SayNothingOfRanksInSoFewBlocksThatTheyTellNothing) {
  verdicts::Judgement judgement = made_judgement();
  judgement.comparisons.front().run_by_run->by_blocks =
      verdicts::SignedRanks{.blocks = 3, .p = 0.25, .smallest_possible_p = 0.25};

  const std::string text = said(run_by_run_section(judgement));

  EXPECT_THAT(text, HasSubstr("(6 and 6 runs), p = 0.0022.\n"));
  EXPECT_EQ(text.find("ranked"), std::string::npos);
}

}  // namespace
}  // namespace keenfall::telling
