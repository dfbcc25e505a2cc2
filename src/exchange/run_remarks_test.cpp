#include "exchange/run_remarks.h"

#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::Not;

TEST(Remarks, NameARunThatAStrayCellCutsInTwo) {
  const auto trial = taken(
      "blade,medium,run,cuts,reading,bevel_angle_per_side_deg\n"
      "A,s,1,0,9,17\nA,s,1,1,9,17\nA,s,1,3,9,71e-1\n");

  EXPECT_THAT(trial.remarks, Contains(HasSubstr("rows differ in bevel_angle_per_side_deg")));
}

TEST(Remarks, LeaveRunsOfSeveralEdgesAlone) {
  const auto trial = taken(
      "blade,medium,run,cuts,reading,finish\nA,s,1,0,9,a\nA,s,1,1,9,a\nA,s,1,0,9,b\nA,s,1,1,9,b\n");

  EXPECT_THAT(trial.remarks, Not(Contains(HasSubstr("taken as two runs"))));
}

TEST(Remarks, NameBladesAndMediaThatDifferOnlyInSpelling) {
  const auto trial = taken(with_rows("A 1,Sisal,1,0,9\na1,sisal,1,0,9\n"));

  EXPECT_THAT(trial.remarks,
              Contains("The blades “A 1” and “a1” are taken as two, though they differ only in "
                       "spelling."));
  EXPECT_THAT(trial.remarks, Contains(HasSubstr("The media “Sisal” and “sisal”")));
}

TEST(Remarks, DoubtAnAngleThatMayBeInclusive) {
  const auto trial =
      taken("blade,medium,run,cuts,reading,bevel_angle_per_side_deg\nA,s,1,0,9,34\n");

  EXPECT_THAT(trial.remarks, Contains(HasSubstr("34° per side, which is 68° inclusive")));
}

TEST(Remarks, SayWhereAThreadIsNamedForSomeRunsOnly) {
  const auto trial = taken("blade,medium,run,cuts,reading,thread\nA,s,1,0,9,nylon\nA,s,2,0,9,\n");

  EXPECT_THAT(trial.remarks,
              Contains(HasSubstr("The thread of thread_push is named in some runs")));
}

}  // namespace
}  // namespace keenfall::exchange
