#include "trust/running.h"

#include <gtest/gtest.h>

#include <atomic>
#include <mutex>
#include <set>

namespace keenfall::trust {
namespace {

class RunningBatches : public ::testing::Test {
 protected:
  void SetUp() override { std::filesystem::remove_all(folder_); }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  // An experiment whose batches each count themselves.
  Running a_run(const std::string& name, int batches) {
    Experiment experiment{
        .name = name, .definition = name, .batches = batches, .measured = [this](int batch) {
          const std::scoped_lock lock(guard_);
          measured_.insert(batch);
          return Sums{{"sum", batch}};
        }};
    KeptBatches kept(folder_, experiment, {.code = "0123"});
    return {.experiment = std::move(experiment), .kept = std::move(kept)};
  }

  std::multiset<int> measured_;

 private:
  std::mutex guard_;
  std::filesystem::path folder_ = std::filesystem::path(::testing::TempDir()) /
                                  (std::string("keenfall-running-") +
                                   ::testing::UnitTest::GetInstance()->current_test_info()->name());
};

TEST_F(RunningBatches, AreAllMeasuredOnceAndReported) {
  Running run = a_run("cells", 10);
  std::vector<Running*> runs{&run};
  double last = 0;

  EXPECT_TRUE(run_all(runs, 2, [&last](const base::Progress& progress) {
    EXPECT_GT(progress.fraction_done, last);
    last = progress.fraction_done;
    return true;
  }));

  EXPECT_EQ(measured_, (std::multiset<int>{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}));
  EXPECT_EQ(sum_of(run.kept.total(), "sum"), 45);
  EXPECT_DOUBLE_EQ(last, 1);
}

TEST_F(RunningBatches, StopWhenAskedToAndGoOnWhereTheyWere) {
  {
    Running run = a_run("cells", 10);
    std::vector<Running*> runs{&run};
    EXPECT_FALSE(run_all(
        runs, 1, [](const base::Progress& progress) { return progress.fraction_done < 0.35; }));
    EXPECT_EQ(run.kept.count(), 4);
  }
  measured_.clear();

  Running again = a_run("cells", 10);
  std::vector<Running*> runs{&again};
  EXPECT_TRUE(run_all(runs, 1, base::unwatched()));

  EXPECT_EQ(measured_, (std::multiset<int>{4, 5, 6, 7, 8, 9}));
  EXPECT_EQ(sum_of(again.kept.total(), "sum"), 45);
}

TEST_F(RunningBatches, OfNothingAreDoneAtOnce) {
  EXPECT_TRUE(run_all({}, 2, base::unwatched()));
  EXPECT_TRUE(measured_.empty());
}

}  // namespace
}  // namespace keenfall::trust
