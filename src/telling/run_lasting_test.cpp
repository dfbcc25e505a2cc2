#include "telling/run_lasting.h"

#include "verdicts/made_judgement_test.h"

#include <gtest/gtest.h>

namespace keenfall::telling {
namespace {

using verdicts::RunResult;
using verdicts::testing::around;

// What a run lasted is at the level its medium is compared at, not at half keenness.
TEST(RunLasting, IsToWhereItsMediumIsCompared) {
  const RunResult run{
      .last_cuts = 127, .half_keenness_cuts = around(18, 0.1), .compared_cuts = around(107, 0.1)};

  EXPECT_EQ(run_lasting(run), (RunLasting{.cuts = 107, .words = "107"}));
}

TEST(RunLasting, OfARunStoppedBeforeIsAtLeastWhatItWasCut) {
  const RunResult run{.last_cuts = 42,
                      .half_keenness_cuts = around(18, 0.1),
                      .compared_cuts = around(107, 0.1),
                      .stopped_before_compared = true};

  EXPECT_EQ(run_lasting(run)->words, "at least 42");
  EXPECT_EQ(run_lasting(run)->known, RunKnown::at_least);
}

TEST(RunLasting, OfAnEdgeBlunterThanTheReadingFromTheStartIsNone) {
  const RunResult run{.last_cuts = 127, .compared_cuts = around(1e-6, 0.1)};

  EXPECT_EQ(run_lasting(run)->words, "none");
}

// 0 cuts passed means: not known to have passed (judgement.h).
TEST(RunLasting, OfAnEdgeThatFailedAtTheFirstTryIsAtMost) {
  EXPECT_EQ(run_lasting({.lasted_cuts = 0, .failed_by_cuts = 5}),
            (RunLasting{.known = RunKnown::at_most, .cuts = 5, .words = "at most 5.0"}));
  EXPECT_EQ(run_lasting({.lasted_cuts = 60, .failed_by_cuts = 70})->words, "60 to 70");
  EXPECT_EQ(run_lasting({.lasted_cuts = 60})->words, "at least 60");
}

TEST(RunLasting, IsNothingWhereNothingIsKnown) {
  EXPECT_FALSE(run_lasting({.lasted_cuts = 0}));
  EXPECT_FALSE(run_lasting({}));
  EXPECT_FALSE(run_lasting({.compared_cuts = around(20, 0.1), .not_used_because = "voided"}));
}

TEST(RunLasting, HasANameInJsonForAllThatIsKnown) {
  EXPECT_EQ(in_json(RunKnown::exactly), "exactly");
  EXPECT_EQ(in_json(RunKnown::at_least), "at_least");
  EXPECT_EQ(in_json(RunKnown::at_most), "at_most");
  EXPECT_EQ(in_json(RunKnown::between), "between");
  EXPECT_EQ(in_json(RunKnown::none), "none");
}

}  // namespace
}  // namespace keenfall::telling
