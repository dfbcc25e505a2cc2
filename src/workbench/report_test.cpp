#include "workbench/report.h"

#include "workbench/notebook_changes.h"
#include "workbench/notebook_pages.h"
#include "workbench/trial_table.h"

#include "exchange/long_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>
#include <utility>
#include <vector>

#include <unistd.h>

namespace keenfall::workbench {
namespace {

using ::testing::ElementsAre;

class TheReport : public ::testing::Test {
 protected:
  void SetUp() override {
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directory(folder_);
    std::ofstream file(table_);
    file << "blade,medium,run,cuts,reading,struck,voided\n";
    const int readings[] = {101, 142, 187, 236};
    for (const char* blade : {"A", "B"}) {
      const int pace = blade[0] == 'A' ? 10 : 20;
      for (int run = 1; run <= 2; ++run) {
        const std::string row = std::string(blade) + ",felt," + std::to_string(run) + ",";
        for (int i = 0; i < 4; ++i) {
          file << row << pace * i << "," << readings[i] + 9 * run * (i % 2) << ",,\n";
        }
        file << row << pace << ",900,slipped,\n";
      }
    }
    file << "B,felt,3,0,100,,burr left\n";
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  [[nodiscard]] static ReportOfFiles reported(const std::string& path) {
    const std::vector<std::string> paths = {path};
    auto made = report_of_files(paths, {}, kBy, base::one_thread(), base::unwatched());
    if (!made) throw std::runtime_error(made.error().front().sentence);
    return *made;
  }

  static inline const JudgedBy kBy{.hand = {.who = "R.",
                                            .machine_words = "bench-2, process 4711",
                                            .at_utc = "2026-11-26T12:00:00Z"},
                                   .program_version = "0.1.0"};
  std::filesystem::path folder_ = std::filesystem::temp_directory_path() /
                                  ("keenfall_report_" + std::to_string(getpid()) + "_" +
                                   ::testing::UnitTest::GetInstance()->current_test_info()->name());
  std::string table_ = folder_ / "spring.csv";
};

TEST_F(TheReport, SaysWhatItIsOfAndNoFolderOfIt) {
  const telling::Report report = reported(table_).report;

  EXPECT_EQ(report.title, "spring");
  EXPECT_EQ(report.written_on, "2026-11-26");
  EXPECT_EQ(report.program_version, "0.1.0");
  EXPECT_THAT(report.from, ElementsAre("spring.csv"));
}

TEST_F(TheReport, HoldsTheJudgementsOfJudgeAndTheTrialWithAllThatDoesNotCount) {
  const std::vector<std::string> paths = {table_};

  const telling::Report report = reported(table_).report;

  auto judged = judge_files(paths, {}, kBy, base::one_thread(), base::unwatched());
  ASSERT_EQ(report.judgements.size(), 1U);
  EXPECT_EQ(report.judgements[0].judgement.comparisons, judged->judgements[0].comparisons);
  EXPECT_EQ(report.trial, judged->trial);
  EXPECT_EQ(report.trial.runs[4].voided_reason, "burr left");
  EXPECT_EQ(report.trial.runs[0].readings[2].struck_reason, "slipped");
}

TEST_F(TheReport, ShowsEveryRunAndTheVoidedOneToo) {
  const telling::ReportedJudgement judged = reported(table_).report.judgements[0];

  ASSERT_EQ(judged.runs.size(), 5U);
  ASSERT_EQ(judged.runs[1].checkpoints.size(), 4U);
  EXPECT_NEAR(judged.runs[1].checkpoints[1].reading, 160, 1e-9);  // 142 + 18; 900 is struck out
  EXPECT_NEAR(*judged.runs[1].half_keenness_over_arm, 1, 0.3);
  EXPECT_EQ(judged.judgement.runs[4].not_used_because, "voided: burr left");
  EXPECT_EQ(judged.runs[4].checkpoints.size(), 1U);
  EXPECT_FALSE(judged.runs[4].half_keenness_over_arm);
}

TEST_F(TheReport, OfANotebookCountsAsALookAndHasTheNumbersOfItsTable) {
  const std::string notebook = folder_ / "bench.keen";
  ASSERT_TRUE(new_notebook(notebook, "keenfall test", kBy.hand));
  ASSERT_TRUE(take_into({.notebook = notebook, .tables = {table_}}, kBy.hand));

  const ReportOfFiles made = reported(notebook);

  EXPECT_EQ(made.kept_words, "Counted as look 1 at this trial, with its answer.");
  EXPECT_EQ(trial_in(notebook, "spring")->looks.size(), 1U);
  EXPECT_THAT(made.report.from, ElementsAre("bench.keen"));
  EXPECT_EQ(made.report.judgements[0].runs, reported(table_).report.judgements[0].runs);
}

TEST_F(TheReport, FailsAsJudgingDoes) {
  const std::vector<std::string> paths = {table_};

  const auto made =
      report_of_files(paths, {.kind = "glint"}, kBy, base::one_thread(), base::unwatched());

  ASSERT_FALSE(made);
  EXPECT_EQ(made.error().front().place.column, "--kind");
}

TEST_F(TheReport, HasATableThatIsTakenBackWhole) {
  const telling::Report report = reported(table_).report;

  const TrialTable table = trial_table(report.trial);

  EXPECT_TRUE(table.is_whole);
  auto again = exchange::take_table_text(table.csv, "again.csv", {});
  ASSERT_TRUE(again);
  EXPECT_EQ(again->runs.size(), report.trial.runs.size());
  EXPECT_EQ(trial_table(*again).csv, table.csv);
}

TEST_F(TheReport, SaysOfATableWhatItHasNoPlaceFor) {
  trials::Trial trial = reported(table_).report.trial;
  trial.blades[0].hardness =
      trials::Hardness{.reading = 720, .scale = trials::HardnessScale::vickers};

  const TrialTable table = trial_table(trial);

  EXPECT_FALSE(table.is_whole);
  EXPECT_THAT(table.left_out, ElementsAre("the hardness of A, which is not in Rockwell C"));
}

TEST_F(TheReport, SaysOfATableThatARunWithoutAnythingHasNoRow) {
  trials::Trial trial = reported(table_).report.trial;
  trial.runs.push_back({.name = "9", .arm = trial.runs[0].arm});

  EXPECT_THAT(trial_table(trial).left_out,
              ElementsAre("run 9 of A on felt, of which nothing is recorded"));
}

TEST_F(TheReport, HasATableThatIsWholeWhicheverBladeIsNamedFirst) {
  trials::Trial trial = reported(table_).report.trial;
  std::swap(trial.blades[0], trial.blades[1]);

  EXPECT_TRUE(trial_table(trial).is_whole);
}

TEST_F(TheReport, SaysHowItIsJudgedAgain) {
  const std::vector<std::string> paths = {table_};

  const auto made =
      report_of_files(paths, {.worth_it_margin = 2}, kBy, base::one_thread(), base::unwatched());

  EXPECT_EQ(made->report.judged_again_by, "keenfall judge readings.csv --worth-it=2 --seed=1");
  EXPECT_TRUE(made->report.not_in_its_table.empty());
}

}  // namespace
}  // namespace keenfall::workbench
