#include "trust/kept_batches.h"

#include <gtest/gtest.h>

#include <fstream>
#include <string>

namespace keenfall::trust {
namespace {

class KeptBatchesOnDisk : public ::testing::Test {
 protected:
  void SetUp() override { std::filesystem::remove_all(folder_); }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  [[nodiscard]] KeptBatches opened(const MadeBy& made_by) const {
    return {folder_, experiment_, made_by};
  }
  [[nodiscard]] std::filesystem::path file() const { return folder_ / "runs-4.one.txt"; }

  Experiment experiment_{.name = "runs-4.one", .definition = "4 runs", .batches = 3};
  MadeBy now_{.code = "0123", .commit = "abcd"};

 private:
  std::filesystem::path folder_ = std::filesystem::path(::testing::TempDir()) /
                                  (std::string("keenfall-kept-") +
                                   ::testing::UnitTest::GetInstance()->current_test_info()->name());
};

TEST_F(KeptBatchesOnDisk, AreThereAgainTheNextTime) {
  KeptBatches first = opened(now_);
  first.keep(0, {{"trials", 50}});
  first.keep(2, {{"trials", 50}, {"unusable", 1}});

  const KeptBatches again = opened(now_);

  EXPECT_EQ(again.count(), 2);
  EXPECT_TRUE(again.has(0));
  EXPECT_FALSE(again.has(1));
  EXPECT_EQ(again.total(), (Sums{{"trials", 100}, {"unusable", 1}}));
  EXPECT_FALSE(again.others_were_there());
}

TEST_F(KeptBatchesOnDisk, OfOtherCodeOrAnotherDefinitionDoNotCount) {
  opened(now_).keep(0, {{"trials", 50}});
  EXPECT_EQ(opened({.code = "4567"}).count(), 0);
  EXPECT_TRUE(opened({.code = "4567"}).others_were_there());

  experiment_.definition = "5 runs";
  EXPECT_EQ(opened(now_).count(), 0);
}

TEST_F(KeptBatchesOnDisk, OfAnotherCommitWithTheSameCodeCount) {
  opened(now_).keep(0, {{"trials", 50}});

  EXPECT_EQ(opened({.code = "0123", .commit = "ef01"}).count(), 1);
}

TEST_F(KeptBatchesOnDisk, OfUncommittedCodeAreNeverTakenUpAgain) {
  opened({}).keep(0, {{"trials", 50}});

  EXPECT_EQ(opened({}).count(), 0);
  EXPECT_EQ(opened(now_).count(), 0);
}

TEST_F(KeptBatchesOnDisk, LeaveOutALineThatWasCutOff) {
  opened(now_).keep(0, {{"trials", 50}});
  std::ofstream(file(), std::ios::app) << "batch 1: trials=5";

  KeptBatches kept = opened(now_);
  EXPECT_EQ(kept.count(), 1);
  kept.keep(2, {{"trials", 50}});

  EXPECT_EQ(opened(now_).total(), (Sums{{"trials", 100}}));
}

TEST_F(KeptBatchesOnDisk, OfOtherCodeArePutAwayByTheFirstNewOne) {
  opened(now_).keep(0, {{"trials", 50}});
  opened({.code = "4567"}).keep(1, {{"trials", 49}});

  EXPECT_EQ(opened({.code = "4567"}).total(), (Sums{{"trials", 49}}));
  EXPECT_EQ(opened(now_).count(), 0);
}

}  // namespace
}  // namespace keenfall::trust
