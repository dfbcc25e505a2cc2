#include "exchange/counting_word.h"

#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;

std::string counted_in(const std::string& text, const TableOptions& options = {}) {
  return taken(text, options).counted.many;
}

TEST(WhatIsCounted, IsCutsUnlessTheTableSaysOtherwise) {
  EXPECT_EQ(counted_in(with_rows("A,sisal,1,0,104\n")), "cuts");
  EXPECT_EQ(
      counted_in("blade,medium,run,n,reading\nA,sisal,1,0,104\n", {.columns = {{"cuts", "n"}}}),
      "cuts");
}

TEST(WhatIsCounted, IsTheWordOfTheColumnThatIsMappedToCuts) {
  const auto under = [](const std::string& header) {
    return counted_in("blade,medium,run," + header + ",reading\nA,sisal,1,0,104\n",
                      {.columns = {{"cuts", header}}});
  };

  EXPECT_EQ(under("strokes"), "strokes");
  EXPECT_EQ(under("Passes"), "passes");
  EXPECT_EQ(under("time_min"), "minutes");
}

TEST(WhatIsCounted, IsNotTakenFromAColumnNobodyMapped) {
  EXPECT_EQ(counted_in("blade,medium,run,cuts,passes,reading\nA,sisal,1,0,6,104\n"), "cuts");
}

TEST(WhatIsCounted, IsTheWordBesideTheNumbersOfALineARun) {
  const trials::Trial trial = taken("blade,medium,run,0,15 strokes\nA,sisal,1,104,131 slipped\n");

  EXPECT_EQ(trial.counted.many, "strokes");
  EXPECT_THAT(trial.runs.front().notes, Contains("131 at 15 strokes: slipped"));
}

TEST(WhatIsCounted, IsTheWordOfAWideTablesRows) {
  const std::string header = "blade;A\nmedium;sisal\nrun;1\n";

  EXPECT_EQ(counted_in(header + "0;104\n15 slices;131\n"), "slices");
  EXPECT_EQ(counted_in(header + "strokes;\n0;104\n15;131\n", {.columns = {{"cuts", "strokes"}}}),
            "strokes");
  EXPECT_EQ(counted_in(header + "0;104\n15;131\n"), "cuts");
}

TEST(WhatIsCounted, IsTheWordOfEdgeLives) {
  const trials::Trial trial =
      taken("blade,medium,run,lasted,failed_by\nA,sisal,1,40 sheets,50 sheets\n");

  EXPECT_EQ(trial.counted.many, "sheets");
  EXPECT_EQ(trial.runs.front().edge_lives.front().failed_by_cuts, 50);
}

TEST(WhatIsCounted, IsRefusedWhereOneTrialSaysTwoWords) {
  const std::string problem =
      problem_in("blade,medium,run,0,15 strokes,31 cuts\nA,sisal,1,104,131,160\n");

  EXPECT_THAT(problem, HasSubstr("Cuts are counted here, and strokes in line 2"));
  EXPECT_THAT(problem, HasSubstr("convert one of the two, or judge them apart"));
}

TEST(WhatIsCounted, StandsInWhatIsSaidOfTheTable) {
  const TableOptions strokes{.columns = {{"cuts", "strokes"}}};

  EXPECT_THAT(
      problem_in("blade,medium,run,strokes,reading\nA,sisal,1,63,104\nA,sisal,1,1,99\n", strokes),
      HasSubstr("goes back from 63 to 1 stroke. Is this a second run?"));
  EXPECT_THAT(problem_in("blade,medium,run,lasted,failed_by\nA,sisal,1,40 strokes,30 strokes\n"),
              HasSubstr("cannot have failed by 30 strokes and still have passed after 40."));
  EXPECT_THAT(problem_in("blade,medium,run,lasted\nA,sisal,1,40 strokes\n"),
              HasSubstr("The edge lasted 40 strokes, but whether it then failed"));
}

}  // namespace
}  // namespace keenfall::exchange
