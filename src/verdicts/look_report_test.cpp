#include "verdicts/look_report.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::verdicts {
namespace {

using ::testing::HasSubstr;

LookReport looked_at(std::vector<int> runs) {
  return look_report(runs, std::vector<int>{3, 6, 9}, {1});
}

TEST(LookReport, NamesThePlannedLookAndTheNext) {
  const LookReport look = looked_at({6, 6, 6});

  EXPECT_EQ(look.number, 2);
  EXPECT_EQ(look.next_runs, 9);
  EXPECT_GT(look.stretch_95, 1);
  EXPECT_THAT(in_words(look),
              HasSubstr("after 6 runs each, look 2 of the 3 planned (3, 6 and 9 runs)"));
  EXPECT_THAT(in_words(look), HasSubstr("the rest goes on to 9 runs each."));
}

TEST(LookReport, SaysWhenALookWasNotPlanned) {
  const LookReport look = looked_at({4, 4});

  EXPECT_EQ(look.number, std::nullopt);
  EXPECT_EQ(look.next_runs, 6);
  EXPECT_THAT(in_words(look), HasSubstr("none of the 3 planned"));
  EXPECT_THAT(in_words(look), HasSubstr("less sure than it says"));
}

TEST(LookReport, DoesNotTakeUnequalRunsForAPlannedLook) {
  EXPECT_EQ(looked_at({6, 5}).number, std::nullopt);
  EXPECT_THAT(in_words(looked_at({6, 5})), HasSubstr("after 5 to 6 runs each"));
}

TEST(LookReport, SaysThatTheLastLookEndsThePlan) {
  const LookReport look = looked_at({9, 9});

  EXPECT_EQ(look.next_runs, std::nullopt);
  EXPECT_THAT(in_words(look), HasSubstr("the last look"));
}

}  // namespace
}  // namespace keenfall::verdicts
