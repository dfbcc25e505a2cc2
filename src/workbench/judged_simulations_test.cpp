#include "workbench/judged_simulation_test.h"

#include <gtest/gtest.h>

namespace keenfall::workbench::testing {
namespace {

// The short form of judged_simulations_tables_test.cpp: two trials in each stock. Fewer than four
// of six intervals of 95 % hold the truth with a chance of 0.2 % (binomial).
TEST(JudgedSimulations, HoldTheSimulatorsRatioAndNeverSettleTheWrongOrder) {
  int covered = 0;
  for (const Stock stock : {Stock::clean, Stock::gritty, Stock::mixed}) {
    for (const std::uint64_t seed : {1U, 2U}) {
      const HeldToTheTruth held = held_to_the_truth(bench_trial(stock_of(stock), seed));
      EXPECT_TRUE(held.usable);
      EXPECT_FALSE(held.wrong_order);
      covered += held.covers ? 1 : 0;
    }
  }

  EXPECT_GE(covered, 4);
}

// An edge that rests wet after seven cuts, and then hardly blunts: 1 um of land on 0.5 within one
// checkpoint. No curve of the family is flat, steep and flat again, and few runs show it.
TEST(JudgedSimulations, SayWhereTheFamilyOfCurvesIsWrong) {
  const auto work =
      work_in_words("7 new sisal matting, pause 100 h wet at 0.01 um/h, 5000 new sisal matting",
                    apex_catalogue({}).value())
          .value();

  for (const int runs_each : {4, 6}) {
    wear::TrialPlan plan = bench_trial(work, 1);
    plan.runs_each = runs_each;
    plan.blocks = runs_each;

    EXPECT_FALSE(held_to_the_truth(plan).curve_passed) << runs_each;
  }
}

}  // namespace
}  // namespace keenfall::workbench::testing
