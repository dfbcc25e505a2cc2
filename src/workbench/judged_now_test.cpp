#include "workbench/judged_now.h"

#include "workbench/notebook_changes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <unistd.h>

namespace keenfall::workbench {
namespace {

class JudgedNow : public ::testing::Test {
 protected:
  void SetUp() override {
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directory(folder_);
    const std::string path = folder_ / "bench.keen";
    ASSERT_TRUE(new_notebook(path, "keenfall test", by_.hand));
    const auto table = folder_ / "rope.csv";
    std::ofstream(table) << "blade,medium,run,cuts,reading\n"
                            "A,sisal,1,0,100\nA,sisal,1,10,150\nA,sisal,1,20,190\n"
                            "A,sisal,2,0,104\nA,sisal,2,10,161\nA,sisal,2,20,205\n"
                            "B,sisal,1,0,101\nB,sisal,1,10,120\nB,sisal,1,20,140\n"
                            "B,sisal,2,0,99\nB,sisal,2,10,116\nB,sisal,2,20,133\n";
    ASSERT_TRUE(take_into({.notebook = path, .tables = {table}, .trial = "rope"}, by_.hand));
    const auto opened = opened_to_read(path);
    asked_ = {.notebook = path, .uid = *notebook::trial_uid_of(*opened, "rope"), .by = by_};
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  const JudgedBy by_{.hand = {.who = "R.",
                              .machine_words = "bench-2, process 4711",
                              .at_utc = "2026-11-26T12:00:00Z"},
                     .program_version = "0.1.0"};
  std::filesystem::path folder_ = std::filesystem::temp_directory_path() /
                                  ("keenfall_judged_now_" + std::to_string(getpid()) + "_" +
                                   ::testing::UnitTest::GetInstance()->current_test_info()->name());
  TrialToJudge asked_;
};

TEST_F(JudgedNow, TellsItsStepsEvenWhereItIsQuick) {
  AtHand at_hand;
  std::vector<std::string> stages;
  std::vector<double> fractions;

  ASSERT_TRUE(judge_quickly(at_hand, asked_, [&](const base::Progress& now) {
    stages.push_back(now.stage);
    fractions.push_back(now.fraction_done);
    return true;
  }));

  EXPECT_EQ(stages,
            (std::vector<std::string>{
                "fitting the curves", "comparing the edges", "writing the answer down"}));
  EXPECT_TRUE(std::ranges::is_sorted(fractions));
}

TEST_F(JudgedNow, StopsBeforeEachOfItsSteps) {
  for (std::size_t last = 1; last <= 3; ++last) {
    AtHand at_hand;
    std::size_t told = 0;

    const auto judged =
        judge_quickly(at_hand, asked_, [&](const base::Progress&) { return ++told < last; });

    ASSERT_FALSE(judged) << last;
    EXPECT_EQ(judged.error().front().kind, base::ProblemKind::interrupted);
    EXPECT_EQ(told, last);
  }
}

TEST_F(JudgedNow, CountsNoLookOfAnAnswerThatWasStopped) {
  AtHand at_hand;
  const auto stops_late = [](const base::Progress& now) {
    return now.stage != "writing the answer down";
  };

  const auto judged = judge_fully(at_hand, asked_, base::one_thread(), stops_late);

  ASSERT_FALSE(judged);
  EXPECT_TRUE(at_hand.trials.trial(asked_.notebook, asked_.uid).value()->looks.empty());
}

}  // namespace
}  // namespace keenfall::workbench
