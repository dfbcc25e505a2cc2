// What taking a trial in would do, tried on a copy.
#include "notebook/a_notebook_test.h"
#include "notebook/kept_trials.h"

#include <gtest/gtest.h>

#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;

class WouldTake : public testing::ANotebook {
 protected:
  static inline const std::vector<TakenTable> kTable = {{"matting.csv", std::string(64, 'a')}};
};

TEST_F(WouldTake, SaysOfANewTrialWhatTakingItDoes) {
  Notebook notebook = made();

  const auto before = would_take(notebook, a_trial(), kTable);
  const auto taken = take(notebook, a_trial(), kTable, next());

  ASSERT_TRUE(before && taken);
  EXPECT_EQ(before->runs_added, taken->runs_added);
  EXPECT_EQ(before->readings_added, taken->readings_added);
}

TEST_F(WouldTake, ChangesNothing) {
  Notebook notebook = made();

  ASSERT_TRUE(would_take(notebook, a_trial(), kTable));

  EXPECT_TRUE(trial_names(notebook).empty());
  EXPECT_TRUE(notebook.journal().empty());
}

TEST_F(WouldTake, NeedsOnlyToRead) {
  {
    Notebook notebook = made();
    ASSERT_TRUE(take(notebook, a_trial(), kTable, next()));
  }
  const auto notebook = Notebook::open_to_read(path_);
  ASSERT_TRUE(notebook);
  trials::Trial more = a_trial();
  more.runs[1].readings.push_back({.cuts = 31, .reading = 200});

  const auto taken = would_take(*notebook, more, kTable);

  ASSERT_TRUE(taken);
  EXPECT_EQ(taken->runs_grown, 1U);
  EXPECT_EQ(taken->runs_known, 1U);
  EXPECT_EQ(taken->readings_added, 1U);
}

TEST_F(WouldTake, SaysWhatContradictsAsTakingDoes) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), kTable, next()));
  trials::Trial other = a_trial();
  other.runs[0].readings[0].reading += 7;

  const auto before = would_take(notebook, other, kTable);
  const auto taken = take(notebook, other, kTable, next());

  ASSERT_FALSE(before);
  ASSERT_FALSE(taken);
  EXPECT_EQ(before.error(), taken.error());
}

TEST_F(WouldTake, TrialsAreKnownByTheirUidAndByName) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), kTable, next()));

  const auto uid = trial_uid_of(notebook, a_trial().name);

  ASSERT_TRUE(uid);
  EXPECT_EQ(uid->size(), 32U);
  EXPECT_EQ(trial_name_of(notebook, *uid), a_trial().name);
  EXPECT_EQ(trial_uid_of(notebook, "another"), std::nullopt);
  EXPECT_EQ(trial_name_of(notebook, ""), std::nullopt);
}

}  // namespace
}  // namespace keenfall::notebook
