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

}  // namespace
}  // namespace keenfall::telling
