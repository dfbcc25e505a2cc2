// Whenever the power goes, all that was acknowledged is there afterwards, the change that was being
// made is there as a whole or not at all, and the notebook takes the next one. KEENFALL_CUTS sets
// how often it goes (100), half of it at points spread over a fixed course, half at random.
#include "notebook/check.h"
#include "notebook/failing_disk.h"
#include "notebook/kept_trials.h"
#include "notebook/made_notebook.h"
#include "notebook/notebook_failure.h"
#include "notebook/told_course.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <random>
#include <string>

namespace keenfall::notebook {
namespace {

using testing::Bench;
using testing::Course;
using testing::FailingDisk;
using testing::kOpener;
using testing::NotebookState;
using testing::run_steps;
using testing::ScratchFolder;
using testing::state_of;
using testing::Step;
using testing::Trouble;

constexpr int kStatesLooked = 3;  // of those a disk may be left in by one cut

const std::string kCopy = ".copy";

int cuts_wanted() { return testing::times_asked_for("KEENFALL_CUTS", 100); }

class ACutOffNotebook : public ::testing::Test {
 protected:
  // Cuts the power at one operation and looks at some of the states that may leave.
  void cut(const std::vector<Step>& steps, const testing::ToldCourse& told, int at) {
    testing::DiskRecord record;
    const Course course = course_until_cut(steps, at, record);
    ++cuts_;
    const FailingDisk never_failing;  // nor waiting for a sync
    for (int i = 0; i < kStatesLooked && !HasFatalFailure(); ++i) {
      const ScratchFolder after("after");
      record.leave(after.path(), random_);
      look_at(after, course, told);
    }
  }

  static Course course_until_cut(const std::vector<Step>& steps,
                                 int at,
                                 testing::DiskRecord& record) {
    const ScratchFolder folder("cut");
    FailingDisk disk;
    disk.expect(Trouble::power_cut, at);
    Course course;
    {
      Bench bench{.path = folder.file("bench.keen")};
      course = run_steps(bench, steps);
    }
    EXPECT_TRUE(disk.has_failed());
    record = disk.record();
    return course;
  }

  void look_at(const ScratchFolder& folder, const Course& course, const testing::ToldCourse& told) {
    const std::string path = folder.file("bench.keen");
    const std::size_t done = course.steps_done;
    auto notebook = Notebook::open_to_write(path, kOpener);
    if (!notebook) {
      ASSERT_EQ(done, 0U) << notebook.error().sentence;  // only a making that was cut off
      ++refusals_[notebook.error().sentence];
      return;
    }
    const auto found = check(*notebook);
    ASSERT_TRUE(found.empty()) << found.front();
    const NotebookState state = state_of(*notebook);
    const bool has_next = done + 1 < told.states.size() && state == told.states[done + 1];
    ASSERT_TRUE(state == told.states[done] || has_next)
        << "after " << done << " steps of " << told.states.size() - 1 << ", "
        << state.journal.size() << " entries instead of " << told.states[done].journal.size();
    ++looked_at_;
    ASSERT_TRUE(take(*notebook, another_trial(), {}, testing::authorship("next")));
    ASSERT_TRUE(check(*notebook).empty());
    if (ends_in_a_copy_) look_at_copy(path + kCopy, done + 1 == told.states.size(), told);
  }

  void look_at_copy(const std::string& path, bool is_done, const testing::ToldCourse& told) {
    const auto copy = Notebook::open_to_read(path);
    if (!copy) {
      ASSERT_FALSE(is_done) << copy.error().sentence;
      ++refusals_[copy.error().sentence];
      return;
    }
    ASSERT_TRUE(check(*copy).empty());
    ASSERT_TRUE(state_of(*copy) == told.states.back());
    ++copies_looked_at_;
  }

  static trials::Trial another_trial() {
    trials::Trial trial = testing::a_trial();
    trial.name = "after the cut";
    return trial;
  }

  void TearDown() override {
    std::cout << cuts_ << " cuts, " << looked_at_ << " notebooks and " << copies_looked_at_
              << " copies looked at";
    for (const auto& [sentence, times] : refusals_) {
      std::cout << "; " << times << " times: " << sentence;
    }
    std::cout << "\n";
  }

  testing::DiskRecord::Random random_{17};
  int cuts_ = 0;
  int looked_at_ = 0;
  int copies_looked_at_ = 0;
  bool ends_in_a_copy_ = false;
  std::map<std::string, int> refusals_;
};

TEST_F(ACutOffNotebook, HoldsAllThatWasAcknowledgedWhereverTheCutFalls) {
  const std::vector<Step> steps = testing::scripted_steps();
  const testing::ToldCourse told = testing::told_of(steps);
  const int apart = std::max(1, told.operations / std::max(1, cuts_wanted() / 2));
  for (int at = 1; at <= told.operations && !HasFatalFailure(); at += apart) {
    SCOPED_TRACE("cut at operation " + std::to_string(at) + " of " +
                 std::to_string(told.operations));
    cut(steps, told, at);
  }
}

TEST_F(ACutOffNotebook, HoldsAllThatWasAcknowledgedAfterAnyCourse) {
  constexpr int kCutsOfACourse = 15;
  for (unsigned seed = 0; cuts_ < cuts_wanted() / 2 && !HasFatalFailure(); ++seed) {
    const std::vector<Step> steps = testing::random_steps(seed, 10 + seed % 30);
    const testing::ToldCourse told = testing::told_of(steps);
    for (int i = 0; i < kCutsOfACourse && !HasFatalFailure(); ++i) {
      const int changes = told.operations - told.operations_to_make;
      const int at = told.operations - static_cast<int>(random_() % static_cast<unsigned>(changes));
      SCOPED_TRACE("seed " + std::to_string(seed) + ", cut at operation " + std::to_string(at));
      cut(steps, told, at);
    }
  }
}

TEST_F(ACutOffNotebook, OfAnOlderFormatHoldsAllThatItHeld) {
  const std::string older = std::string(KEENFALL_SOURCE_DIR) + "/tests/notebooks/schema_1.keen";
  const std::vector<Step> steps = {
      [=](Bench& bench) { std::filesystem::copy_file(older, bench.path); },
      [](Bench& bench) {
        bench.notebook.emplace(std::move(*Notebook::open_to_write(bench.path, kOpener)));
      },
      [](Bench& bench) {
        (void)take(*bench.notebook, another_trial(), {}, testing::authorship("next"));
      },
      [](Bench& bench) { bench.notebook.reset(); }};
  const testing::ToldCourse told = testing::told_of(steps);
  const int apart = std::max(1, told.operations / std::max(1, cuts_wanted() / 2));
  for (int at = 1; at <= told.operations && !HasFatalFailure(); at += apart) {
    SCOPED_TRACE("cut at operation " + std::to_string(at));
    cut(steps, told, at);
  }
}

TEST_F(ACutOffNotebook, HoldsAllOfABackUpOnceThatWasAcknowledged) {
  std::vector<Step> steps = testing::scripted_steps();
  steps.erase(steps.begin() + 5, steps.end());  // its log is not folded in yet
  steps.push_back([](Bench& bench) {
    if (!bench.notebook->back_up_to(bench.path + kCopy)) throw NotebookFailure("it was refused");
  });
  const testing::ToldCourse told = testing::told_of(steps);
  const int apart = std::max(1, told.operations / std::max(1, cuts_wanted() / 2));
  ends_in_a_copy_ = true;
  for (int at = told.operations_to_make; at <= told.operations && !HasFatalFailure(); at += apart) {
    SCOPED_TRACE("cut at operation " + std::to_string(at));
    cut(steps, told, at);
  }
}

}  // namespace
}  // namespace keenfall::notebook
