#include "workbench/trials_at_hand.h"

#include "notebook/kept_trials.h"
#include "workbench/app_asking.h"
#include "workbench/app_home.h"
#include "workbench/judge_files.h"
#include "workbench/notebook_changes.h"

#include <gtest/gtest.h>

#include <cstddef>
#include <filesystem>
#include <fstream>
#include <memory>
#include <string>
#include <vector>

#include <unistd.h>

namespace keenfall::workbench {
namespace {

const Hand kHand{
    .who = "R.", .machine_words = "bench-2, process 4711", .at_utc = "2026-11-26T12:00:00Z"};

class TrialsKeptAtHand : public ::testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::temp_directory_path() /
              ("keenfall_at_hand_" + std::to_string(getpid()) + "_" +
               ::testing::UnitTest::GetInstance()->current_test_info()->name());
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directory(folder_);
    path_ = folder_ / "bench.keen";
    ASSERT_TRUE(new_notebook(path_, "keenfall test", kHand));
    takes("rope", "A,sisal,1,0,100\nA,sisal,1,10,150\nB,sisal,1,0,101\nB,sisal,1,10,201\n");
    const auto opened = opened_to_read(path_);
    uid_ = *notebook::trial_uid_of(*opened, "rope");
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  void takes(const std::string& trial, const std::string& rows) const {
    const auto table = folder_ / (trial + ".csv");
    std::ofstream(table) << "blade,medium,run,cuts,reading\n" << rows;
    ASSERT_TRUE(take_into({.notebook = path_, .tables = {table}, .trial = trial}, kHand));
  }
  [[nodiscard]] std::shared_ptr<const TrialAtHand> seen() {
    const auto found = trials_.trial(path_, uid_);
    EXPECT_TRUE(found);
    return *found;
  }

  std::filesystem::path folder_;
  std::string path_;
  std::string uid_;
  TrialsAtHand trials_;
};

TEST_F(TrialsKeptAtHand, AreReadOnceWhileNothingMoves) {
  const auto first = seen();

  EXPECT_EQ(first->trial->name, "rope");
  EXPECT_EQ(first->trial->runs.size(), 2U);
  EXPECT_EQ(seen(), first);
  EXPECT_EQ(*trials_.checked_trial(path_, uid_), first);
}

// What hangs on a trial's readings holds while others come and go beside them.
TEST_F(TrialsKeptAtHand, KeepTheSameReadingsWhereOnlyTheJournalMoved) {
  const auto first = seen();

  takes("felt", "A,felt,1,0,100\nA,felt,1,10,130\n");

  EXPECT_NE(seen(), first);
  EXPECT_GT(seen()->place.entry, first->place.entry);
  EXPECT_EQ(seen()->trial, first->trial);
}

TEST_F(TrialsKeptAtHand, AreReadAnewWhereTheyChanged) {
  const auto first = seen();

  ASSERT_TRUE(strike_in(path_, {.blade = "B", .run = "1", .cuts = 10, .reason = "burr"}, kHand));

  const auto struck = seen();
  EXPECT_NE(struck->trial, first->trial);
  EXPECT_EQ(struck->trial->runs[1].readings[1].struck_reason, "burr");
  EXPECT_FALSE(first->trial->runs[1].readings[1].struck_reason);
  ASSERT_TRUE(undo_in(path_, std::nullopt, kHand));
  EXPECT_EQ(*seen()->trial, *first->trial);
}

TEST_F(TrialsKeptAtHand, SayWhereThereIsNone) {
  const auto none = trials_.trial(path_, "0123");
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().place.found, "0123");

  const auto elsewhere = trials_.trial(folder_ / "away.keen", uid_);
  ASSERT_FALSE(elsewhere);
  EXPECT_EQ(elsewhere.error().kind, base::ProblemKind::unreadable);
}

// The first page asks for every trial of a notebook, one after another.
TEST_F(TrialsKeptAtHand, AreAllKeptHoweverManySmallOnesThereAre) {
  constexpr std::size_t kSome = 105;
  for (std::size_t i = 0; i < kSome; ++i) {
    ASSERT_TRUE(begin_trial({.notebook = path_, .name = "trial " + std::to_string(i)}, {}, kHand));
  }
  const auto all_seen = [this] {
    std::vector<std::shared_ptr<const TrialAtHand>> all;
    const auto opened = opened_to_read(path_);
    for (const auto& kept : notebook::kept_trials(*opened)) {
      all.push_back(trials_.trial_of(*opened, kept.uid).value());
    }
    return all;
  };

  const auto once = all_seen();

  EXPECT_EQ(once.size(), kSome + 1);
  EXPECT_EQ(all_seen(), once);
}

// A file put in the place of another is not taken for it.
TEST_F(TrialsKeptAtHand, AreReadAnewWhereTheFileIsAnother) {
  const auto first = seen();
  std::filesystem::copy_file(path_, folder_ / "before.keen");
  ASSERT_TRUE(strike_in(path_, {.blade = "B", .run = "1", .reason = "burr"}, kHand));
  EXPECT_TRUE(seen()->trial->runs[1].voided_reason);

  std::filesystem::rename(folder_ / "before.keen", path_);

  EXPECT_EQ(*seen()->trial, *first->trial);
}

}  // namespace
}  // namespace keenfall::workbench
