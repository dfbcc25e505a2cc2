#include "workbench/notebook_changes.h"
#include "workbench/notebook_export.h"
#include "workbench/notebook_merging.h"
#include "workbench/notebook_pages.h"
#include "workbench/notebook_trouble.h"

#include "workbench/judge_files.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include <unistd.h>

namespace keenfall::workbench {
namespace {

class NotebookJobs : public ::testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::temp_directory_path() /
              ("keenfall_jobs_" + std::to_string(getpid()) + "_" +
               ::testing::UnitTest::GetInstance()->current_test_info()->name());
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directory(folder_);
    path_ = folder_ / "bench.keen";
    ASSERT_TRUE(new_notebook(path_, "keenfall test", kHand));
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  [[nodiscard]] std::string table(const std::string& name, const std::string& rows) const {
    const auto path = folder_ / name;
    std::ofstream(path) << "blade,medium,run,cuts,reading\n" << rows;
    return path;
  }
  [[nodiscard]] auto take(const std::string& from, const std::string& trial = "") const {
    return take_into({.notebook = path_, .tables = {from}, .trial = trial}, kHand);
  }
  // Why it was not exported to that name; empty where it was.
  [[nodiscard]] std::string export_refusal(const std::string& name) const {
    try {
      const auto exported = export_notebook({.notebook = path_, .to = folder_ / name});
      return exported ? "" : exported.error().sentence;
    } catch (const NotebookTrouble& trouble) {
      return trouble.what();
    }
  }
  // Every "rubber" in the file becomes "rubbed".
  void damage() const {
    std::ifstream in(path_, std::ios::binary);
    std::string bytes((std::istreambuf_iterator<char>(in)), {});
    for (auto at = bytes.find("rubber"); at != std::string::npos; at = bytes.find("rubber", at)) {
      bytes.replace(at, 6, "rubbed");
    }
    std::ofstream(path_, std::ios::binary) << bytes;
  }

  static inline const Hand kHand{
      .who = "R.", .machine_words = "bench-2, process 4711", .at_utc = "2026-11-26T12:00:00Z"};
  static inline const JudgedBy kBy{.hand = kHand, .program_version = "0.1.0"};
  static inline const std::string kRows =
      "A,rubber,1,0,100\nA,rubber,1,10,150\nB,rubber,1,0,101\nB,rubber,1,10,201\n";
  std::filesystem::path folder_;
  std::string path_;
};

TEST_F(NotebookJobs, NameATrialAfterItsFirstTable) {
  const auto taken = take(table("spring.csv", kRows));

  ASSERT_TRUE(taken);
  EXPECT_EQ(taken->trial, "spring");
  EXPECT_EQ(taken->taken.runs_added, 2U);
  EXPECT_EQ(taken->taken.readings_added, 4U);
  EXPECT_EQ(trial_in(path_, "")->trial.name, "spring");
}

// Made runs are neither added to a trial that was cut nor to one that was made.
TEST_F(NotebookJobs, RefuseAMadeTrialUnderANameThatIsThere) {
  ASSERT_TRUE(take(table("spring.csv", kRows)));
  const auto made_called = [&](const std::string& name) {
    trials::Trial trial = trial_in(path_, "spring")->trial;
    trial.name = name;
    return take_made({.notebook = path_, .trial = trial, .made_from = "simulated, seed 1"}, kHand);
  };

  const auto onto_cut = made_called("spring");
  const auto first = made_called("made");
  const auto again = made_called("made");

  ASSERT_FALSE(onto_cut);
  ASSERT_TRUE(first);
  ASSERT_FALSE(again);
  const std::string words = in_words(again.error().front());
  EXPECT_NE(words.find("has a trial “made” already"), std::string::npos) << words;
  EXPECT_NE(words.find("--trial=NAME"), std::string::npos) << words;
  EXPECT_NE(words.find("--seed"), std::string::npos) << words;
  EXPECT_EQ(trial_in(path_, "made")->trial.runs.size(), 2U);
}

TEST_F(NotebookJobs, KnowATableAgainByItsBytes) {
  ASSERT_TRUE(take(table("spring.csv", kRows), "trial"));

  const auto again = take(table("copy.csv", kRows), "trial");

  ASSERT_TRUE(again);
  EXPECT_FALSE(again->taken.entry);
  EXPECT_EQ(journal_in(path_)->size(), 1U);
}

TEST_F(NotebookJobs, TakeNothingOfATableWithAProblem) {
  const auto refused = take(table("bad.csv", kRows + "B,rubber,2,0,ten\n"));

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().place.line, 6U);
  EXPECT_TRUE(trials_in(path_)->empty());
  EXPECT_EQ(trial_in(path_, "").error().sentence, "The notebook holds no trial yet.");
}

TEST_F(NotebookJobs, AskWhichTrialIsMeantWhereThereAreSeveral) {
  ASSERT_TRUE(take(table("spring.csv", kRows)));
  ASSERT_TRUE(take(table("autumn.csv", "A,felt,1,0,100\n")));

  const auto none = trial_in(path_, "");
  const auto unknown = trial_in(path_, "winter");

  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().accepted, "spring, autumn");
  EXPECT_EQ(unknown.error().sentence, "The notebook has no trial called \"winter\".");
  EXPECT_EQ(trial_in(path_, "autumn")->trial.runs.size(), 1U);
}

TEST_F(NotebookJobs, StrikeInTheOnlyTrialAndUndoIt) {
  ASSERT_TRUE(take(table("spring.csv", kRows)));

  const auto struck =
      strike_in(path_, {.blade = "A", .run = "1", .cuts = 10, .reason = "slipped"}, kHand);

  ASSERT_TRUE(struck);
  EXPECT_EQ(struck->readings, 1U);
  EXPECT_EQ(trial_in(path_, "")->trial.runs[0].readings[1].struck_reason, "slipped");
  EXPECT_EQ(undo_in(path_, std::nullopt, kHand)->undoes, struck->entry.entry);
  EXPECT_FALSE(trial_in(path_, "")->trial.runs[0].readings[1].struck_reason);
}

TEST_F(NotebookJobs, SayWhereThereIsNothingToUndo) {
  const auto undone = undo_in(path_, std::nullopt, kHand);

  ASSERT_FALSE(undone);
  EXPECT_EQ(undone.error().sentence, "There is nothing to undo.");
}

TEST_F(NotebookJobs, CountWhatACheckLookedAt) {
  ASSERT_TRUE(take(table("spring.csv", kRows)));

  const auto checked = check_notebook(path_);

  ASSERT_TRUE(checked);
  EXPECT_TRUE(checked->findings.empty());
  EXPECT_EQ(checked->trials, 1U);
  EXPECT_EQ(checked->runs, 2U);
  EXPECT_EQ(checked->readings, 4U);
  EXPECT_EQ(checked->entries, 1U);
}

TEST_F(NotebookJobs, FindDamageAndNeverJudgeFromIt) {
  ASSERT_TRUE(take(table("spring.csv", kRows)));
  damage();

  EXPECT_FALSE(check_notebook(path_)->findings.empty());
  const std::vector<std::string> paths = {path_};
  EXPECT_THROW((void)judge_files(paths, JudgeOptions(), kBy, base::one_thread(), base::unwatched()),
               NotebookTrouble);
}

TEST_F(NotebookJobs, ExportNothingOfADamagedNotebookInAnyForm) {
  ASSERT_TRUE(take(table("spring.csv", kRows)));
  const std::string before =
      export_refusal("whole.csv") + export_refusal("whole.json") + export_refusal("whole");
  EXPECT_EQ(before, "");
  damage();

  for (const char* name : {"out.csv", "out.json", "out"}) {
    EXPECT_EQ(
        export_refusal(name),
        path_ +
            ": it is not as it was written. The notebook is not as it was written, so nothing "
            "was done with it: keenfall check " +
            path_ + " says what is wrong. A backup may be whole.")
        << name;
    EXPECT_FALSE(std::filesystem::exists(folder_ / name)) << name;
  }
}

// The damage lies in one trial; what is changed has nothing to do with it.
TEST_F(NotebookJobs, ChangeNothingInADamagedNotebook) {
  ASSERT_TRUE(take(table("spring.csv", kRows)));
  ASSERT_TRUE(take(table("autumn.csv", "C,felt,1,0,100\nC,felt,1,10,150\n")));
  const std::string other = folder_ / "other.keen";
  ASSERT_TRUE(new_notebook(other, "keenfall test", kHand));
  ASSERT_TRUE(take_into({.notebook = other, .tables = {table("d.csv", "D,rope,1,0,90\n")}}, kHand));
  damage();
  const auto said = [](const auto& work) {
    try {
      (void)work();
    } catch (const NotebookTrouble& trouble) {
      return std::string(trouble.what());
    }
    return std::string("done");
  };
  const std::string damaged = path_ +
                              ": it is not as it was written. The notebook is not as it was "
                              "written, so nothing was done with it: keenfall check " +
                              path_ + " says what is wrong. A backup may be whole.";

  EXPECT_EQ(said([&] { return take(table("winter.csv", "C,felt,2,0,100\n")); }), damaged);
  EXPECT_EQ(said([&] { return undo_in(path_, std::nullopt, kHand); }), damaged);
  EXPECT_EQ(said([&] { return merge_into({.notebook = path_, .other = other}, kHand); }), damaged);
  EXPECT_EQ(said([&] {
              return strike_in(
                  path_, {.trial = "autumn", .blade = "C", .run = "1", .reason = "slipped"}, kHand);
            }),
            damaged);
  EXPECT_EQ(journal_in(path_)->size(), 2U);
}

TEST_F(NotebookJobs, KeepACopyThatHoldsTheSame) {
  ASSERT_TRUE(take(table("spring.csv", kRows)));
  const std::string copy = folder_ / "copy.keen";

  ASSERT_TRUE(back_up_notebook(path_, copy));

  EXPECT_EQ(trial_in(copy, "spring")->trial, trial_in(path_, "spring")->trial);
  EXPECT_FALSE(back_up_notebook(path_, copy));
}

TEST_F(NotebookJobs, JudgeANotebookByItselfAndWithoutTheOptionsOfTables) {
  const std::string other = table("spring.csv", kRows);
  ASSERT_TRUE(take(other));
  const auto problem = [](const std::vector<std::string>& paths, const JudgeOptions& options) {
    return judge_files(paths, options, kBy, base::one_thread(), base::unwatched()).error().front();
  };

  EXPECT_EQ(problem({path_, other}, {}).sentence,
            "A notebook is judged by itself, and not together with other files.");
  EXPECT_EQ(problem({path_}, {.table = {.sheets = {"one"}}}).place.column, "--sheet");
  EXPECT_EQ(problem({other}, {.trial = "spring"}).place.column, "--trial");
}

TEST_F(NotebookJobs, KnowANotebookByItsNameOrItsFirstBytes) {
  const auto renamed = folder_ / "bench.old";
  std::filesystem::copy_file(path_, renamed);

  EXPECT_TRUE(is_notebook("not_there.keen"));
  EXPECT_TRUE(is_notebook(renamed));
  EXPECT_FALSE(is_notebook(table("spring.csv", kRows)));
}

}  // namespace
}  // namespace keenfall::workbench
