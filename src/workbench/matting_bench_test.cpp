#include "workbench/matting_bench.h"

#include "workbench/judge_tables.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace keenfall::workbench {
namespace {

const verdicts::Judgement& judged_demo() {
  static const verdicts::Judgement judgement =
      judge_trial(matting_bench(kMattingBenchSeed), {}, base::threads(2), base::unwatched())
          ->front();
  return judgement;
}

verdicts::Verdict verdict_between(const std::string& longer,
                                  const std::string& other,
                                  const std::string& medium) {
  const verdicts::Judgement& demo = judged_demo();
  for (const verdicts::Comparison& pair : demo.comparisons) {
    const trials::Arm& a = demo.arms[pair.a].arm;
    const trials::Arm& b = demo.arms[pair.b].arm;
    if (a.medium.name != medium) continue;
    if (a.blade == longer && b.blade == other) return pair.verdict;
    if (b.blade == longer && a.blade == other && !verdicts::is_settled(pair.verdict))
      return pair.verdict;
    if (b.blade == longer && a.blade == other &&
        pair.verdict == verdicts::Verdict::practically_the_same)
      return pair.verdict;
  }
  ADD_FAILURE() << longer << " against " << other << " on " << medium;
  return verdicts::Verdict::not_settled;
}

TEST(MattingBench, IsTheSameForTheSameSeedAndAnotherForAnother) {
  EXPECT_EQ(matting_bench({5}), matting_bench({5}));
  EXPECT_NE(matting_bench({5}), matting_bench({6}));
}

TEST(MattingBench, HasSixBlocksOfSixCellsAVoidedRunAndAStruckReading) {
  const trials::Trial trial = matting_bench(kMattingBenchSeed);
  int used = 0;
  int struck = 0;
  std::set<std::string> blocks;
  for (const trials::Run& run : trial.runs) {
    used += run.voided_reason ? 0 : 1;
    blocks.insert(run.block);
    struck += static_cast<int>(std::ranges::count_if(
        run.readings, [](const auto& r) { return r.struck_reason.has_value(); }));
  }

  EXPECT_EQ(used, 36);
  EXPECT_EQ(trial.runs.size(), 37U);
  EXPECT_EQ(blocks.size(), 6U);
  EXPECT_EQ(struck, 1);
}

TEST(MattingBench, ShowsCLongerAndWorthHavingOnNewMattingAndNeverOnUplifted) {
  ASSERT_TRUE(judged_demo().fit.usable);
  EXPECT_EQ(verdict_between("C", "A", "new matting"), verdicts::Verdict::longer_and_worth_having);
  const verdicts::Verdict uplifted = verdict_between("C", "A", "uplifted matting");
  EXPECT_TRUE(uplifted == verdicts::Verdict::practically_the_same ||
              uplifted == verdicts::Verdict::not_settled);
}

TEST(MattingBench, ShowsAtLeastThreeKindsOfVerdict) {
  std::set<verdicts::Verdict> kinds;
  for (const verdicts::Comparison& pair : judged_demo().comparisons) kinds.insert(pair.verdict);

  EXPECT_GE(kinds.size(), 3U);
}

TEST(MattingBench, IsEstimatedNearItsInventedTruth) {
  struct Truth {
    std::string blade;
    std::string medium;
    double half_keenness;
    double shape;
  };
  const std::vector<Truth> truths{{"A", "new matting", 34, 0.62},
                                  {"B", "new matting", 48, 0.62},
                                  {"C", "new matting", 108, 0.62},
                                  {"A", "uplifted matting", 8.4, 0.80},
                                  {"B", "uplifted matting", 8.8, 0.80},
                                  {"C", "uplifted matting", 9.2, 0.80}};
  for (const Truth& truth : truths) {
    const auto arm =
        std::ranges::find_if(judged_demo().arms, [&truth](const verdicts::ArmResult& found) {
          return found.arm.blade == truth.blade && found.arm.medium.name == truth.medium;
        });
    ASSERT_NE(arm, judged_demo().arms.end());
    EXPECT_GT(truth.half_keenness, arm->half_keenness->cuts.lo95);
    EXPECT_LT(truth.half_keenness, arm->half_keenness->cuts.hi95);
    EXPECT_NEAR(arm->half_keenness->cuts.median / truth.half_keenness, 1, 0.2);
    EXPECT_NEAR(arm->shape->median, truth.shape, 0.06);
  }
}

}  // namespace
}  // namespace keenfall::workbench
