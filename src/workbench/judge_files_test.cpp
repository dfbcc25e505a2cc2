#include "workbench/judge_files.h"

#include "workbench/notebook_changes.h"
#include "workbench/notebook_pages.h"

#include "exchange/long_table_text.h"
#include "notebook/digest.h"

#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include <unistd.h>

namespace keenfall::workbench {
namespace {

class JudgedNotebook : public ::testing::Test {
 protected:
  void SetUp() override {
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directory(folder_);
    ASSERT_TRUE(new_notebook(path_, "keenfall test", kBy.hand));
    take("1");
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  // Two blades, a run each of that name.
  void take(const std::string& run) const {
    const std::string table = folder_ / ("run" + run + ".csv");
    std::ofstream file(table);
    file << "blade,medium,run,cuts,reading\n";
    const int readings[] = {101, 142, 187, 236};
    for (const char* blade : {"A", "B"}) {
      for (int i = 0; i < 4; ++i) {
        file << blade << ",felt," << run << "," << 10 * i * (blade[0] == 'A' ? 1 : 2) << ","
             << readings[i] + 3 * (run[0] - '0') * (i % 2) << "\n";
      }
    }
    file.close();
    ASSERT_TRUE(take_into({.notebook = path_, .tables = {table}, .trial = "felt"}, kBy.hand));
  }

  [[nodiscard]] static JudgedFiles judged(const std::string& path, const JudgedBy& by = kBy) {
    const std::vector<std::string> paths = {path};
    auto files = judge_files(paths, {}, by, base::one_thread(), base::unwatched());
    if (!files) throw std::runtime_error(files.error().front().sentence);
    return *files;
  }

  static inline const JudgedBy kBy{.hand = {.who = "R.",
                                            .machine_words = "bench-2, process 4711",
                                            .at_utc = "2026-11-26T12:00:00Z"},
                                   .program_version = "0.1.0"};
  std::filesystem::path folder_ = std::filesystem::temp_directory_path() /
                                  ("keenfall_judged_" + std::to_string(getpid()) + "_" +
                                   ::testing::UnitTest::GetInstance()->current_test_info()->name());
  std::string path_ = folder_ / "bench.keen";
};

TEST_F(JudgedNotebook, KeepsTheAnswerWithWhatItCameFrom) {
  const JudgedFiles files = judged(path_);

  EXPECT_EQ(files.kept_words, "Counted as look 1 at this trial, with its answer.");
  const auto kept = trial_in(path_, "felt");
  ASSERT_EQ(kept->looks.size(), 1U);
  const notebook::StoredJudgement& stored = kept->looks[0].judgement;
  EXPECT_EQ(stored.inputs.runs, 2U);
  EXPECT_EQ(stored.inputs.readings, 8U);
  EXPECT_EQ(stored.inputs.sha256,
            notebook::in_hex(notebook::sha256_of(exchange::long_table_of(kept->trial))));
  EXPECT_EQ(stored.question, "--worth-it=1.5");
  EXPECT_EQ(stored.seed, base::Seed{1});
  EXPECT_NE(stored.answer.find("\"program_version\""), std::string::npos);
}

TEST_F(JudgedNotebook, JudgesToTheNumbersOfItsTable) {
  const JudgedFiles of_table = judged(folder_ / "run1.csv");
  const JudgedFiles of_notebook = judged(path_);

  EXPECT_EQ(of_table.kept_words, "");
  ASSERT_FALSE(of_table.judgements.front().arms.empty());
  EXPECT_EQ(of_table.judgements.front().arms, of_notebook.judgements.front().arms);
  EXPECT_EQ(of_table.judgements.front().comparisons, of_notebook.judgements.front().comparisons);
}

TEST_F(JudgedNotebook, HandsOutTheTrialItJudged) {
  EXPECT_EQ(judged(path_).trial, trial_in(path_, "felt")->trial);

  const trials::Trial of_table = judged(folder_ / "run1.csv").trial;
  EXPECT_EQ(of_table.name, "run1");
  EXPECT_EQ(of_table.runs.size(), 2U);
}

TEST_F(JudgedNotebook, CountsNoLookWhereOnlyItsTrialIsTaken) {
  const std::vector<std::string> paths = {path_};

  const auto trial = trial_in_files(paths, {});

  ASSERT_TRUE(trial);
  EXPECT_EQ(*trial, trial_in(path_, "felt")->trial);
  EXPECT_TRUE(trial_in(path_, "felt")->looks.empty());
}

TEST_F(JudgedNotebook, IsRefusedAsATrialWhereItWouldNotBeJudged) {
  const std::vector<std::string> both = {path_, folder_ / "run1.csv"};
  const std::vector<std::string> table = {folder_ / "run1.csv"};

  EXPECT_EQ(trial_in_files(both, {}).error().front().sentence,
            "A notebook is judged by itself, and not together with other files.");
  EXPECT_EQ(trial_in_files(table, {.trial = "felt"}).error().front().place.column, "--trial");
}

TEST_F(JudgedNotebook, CautionsWhoLooksAgainAtMoreReadings) {
  const std::size_t said_at_first = judged(path_).judgements.front().cannot_say.size();
  EXPECT_EQ(judged(path_).judgements.front().cannot_say.size(), said_at_first);  // the same state
  take("2");

  const JudgedFiles files = judged(path_);

  EXPECT_EQ(files.kept_words,
            "Counted as look 3 at this trial, with its answer. Its readings were looked at in 2 "
            "different states by now.");
  EXPECT_EQ(files.judgements.front().cannot_say.back().substr(0, 102),
            "These readings were looked at in 2 different states, this one included, and no looks "
            "were planned. Who");
}

TEST_F(JudgedNotebook, StoresAnAnswerThatDoesNotDependOnEarlierLooks) {
  (void)judged(path_);
  take("2");
  const JudgedFiles files = judged(path_);
  const std::string shown = files.judgements.front().cannot_say.back();

  const auto looks = trial_in(path_, "felt")->looks;

  ASSERT_EQ(looks.size(), 2U);
  EXPECT_NE(shown.find("different states"), std::string::npos);
  EXPECT_EQ(looks[1].judgement.answer.find("different states"), std::string::npos);
}

TEST_F(JudgedNotebook, IsCountedOnceAnotherHasWritten) {
  auto other = opened_to_write(
      path_, {.who = "T.", .machine_words = "bench-3", .at_utc = "2026-11-26T12:00:00Z"});
  ASSERT_TRUE(other);
  std::optional<notebook::Notebook> writer(std::move(*other));
  std::atomic<bool> is_waiting{false};
  const std::jthread done([&] {
    is_waiting.wait(false);
    std::this_thread::sleep_for(std::chrono::milliseconds(60));
    writer.reset();
  });

  is_waiting = true;
  is_waiting.notify_one();
  const auto opened = opened_to_write_within(std::chrono::minutes(1), path_, kBy.hand);

  EXPECT_TRUE(opened);
}

TEST_F(JudgedNotebook, IsJudgedWhileAnotherWritesAndSaysThatItIsNotCounted) {
  const auto writer = opened_to_write(
      path_, {.who = "T.", .machine_words = "bench-3", .at_utc = "2026-11-26T12:00:00Z"});
  ASSERT_TRUE(writer);

  JudgedBy impatient = kBy;
  impatient.patience = {};
  const JudgedFiles files = judged(path_, impatient);

  EXPECT_FALSE(files.judgements.empty());
  EXPECT_EQ(files.kept_words,
            "Not counted as a look, and the answer is not stored: The notebook is being written to "
            "by T. on bench-3, since 2026-11-26T12:00:00Z, and one writes at a time.");
  EXPECT_TRUE(trial_in(path_, "felt")->looks.empty());
}

}  // namespace
}  // namespace keenfall::workbench
