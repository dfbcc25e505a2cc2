#include "exchange/reading_remarks.h"
#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::Not;

// Six runs that read 100, 120 and 150 at 0, 50 and 250 cuts, each a little apart.
std::string six_runs(const std::string& last_run) {
  std::string rows;
  for (int run = 1; run <= 5; ++run) {
    const std::string name = "A,s," + std::to_string(run) + ",";
    rows += name + "0," + std::to_string(100 + run) + "\n" + name + "50," +
            std::to_string(120 + 2 * run) + "\n" + name + "250," + std::to_string(150 - run) + "\n";
  }
  return with_rows(rows + last_run);
}

TEST(CheckpointsPassedOver, AreNamed) {
  EXPECT_THAT(taken(six_runs("A,s,6,0,103\nA,s,6,250,151\n")).remarks,
              Contains("Run 6 of blade A in s has no reading at 50 cuts, where most of the others "
                       "have one."));
}

TEST(CheckpointsPassedOver, AreToldFromThoseOfWhichAllIsStruckOut) {
  trials::Trial trial = taken(six_runs("A,s,6,0,103\nA,s,6,50,900\nA,s,6,250,151\n"));
  trial.runs[5].readings[1].struck_reason = "slipped";

  const std::vector<std::string> remarks = remarks_on_gaps(trial);

  EXPECT_THAT(remarks,
              Contains("Run 6 of blade A in s has no reading that is not struck out at 50 cuts, "
                       "where most of the others have one."));
  EXPECT_THAT(remarks, Not(Contains(HasSubstr("has no reading at"))));
}

TEST(CheckpointsPassedOver, AreNotThoseAfterARunStopped) {
  EXPECT_THAT(taken(six_runs("A,s,6,0,103\nA,s,6,50,125\n")).remarks,
              Not(Contains(HasSubstr("has no reading at"))));
}

TEST(FarReadings, AreNamed) {
  EXPECT_THAT(taken(six_runs("A,s,6,0,240\nA,s,6,50,125\nA,s,6,250,151\n")).remarks,
              Contains("Run 6 of blade A in s reads 240 at 0 cuts, far from the blade's other runs "
                       "there. If it is a slip, strike it with a reason."));
}

TEST(FarReadings, AreNotLookedForAmongFewRuns) {
  EXPECT_THAT(taken(with_rows("A,s,1,0,100\nA,s,2,0,101\nA,s,3,0,240\n")).remarks,
              Not(Contains(HasSubstr("far from"))));
}

// 1 N is 102 gf.
TEST(RunsInAnotherUnit, AreAskedAbout) {
  EXPECT_THAT(taken(six_runs("A,s,6,0,1.01\nA,s,6,50,1.2\nA,s,6,250,1.5\n")).remarks,
              Contains("Run 6 of blade A in s begins at 1.01, where the others begin at about 103. "
                       "Is it in another unit? A column unit says so."));
  EXPECT_THAT(taken(six_runs("A,s,6,0,80\nA,s,6,50,125\nA,s,6,250,151\n")).remarks,
              Not(Contains(HasSubstr("another unit"))));
}

}  // namespace
}  // namespace keenfall::exchange
