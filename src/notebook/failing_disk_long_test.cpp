// A disk that is full, or fails, wherever it does: the change is refused in a plain sentence, what
// was there before is all there, and the change is taken once the disk is well again, by the same
// open notebook and by one opened anew. KEENFALL_FAILURES sets at how many points of each course
// (20); a large number means at every one.
#include "notebook/check.h"
#include "notebook/failing_disk.h"
#include "notebook/made_notebook.h"
#include "notebook/notebook_failure.h"
#include "notebook/told_course.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <map>
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
using testing::ToldCourse;
using testing::Trouble;

int points_wanted() { return testing::times_asked_for("KEENFALL_FAILURES", 20); }

const std::string kFull = "there is no room left on the disk; nothing of this change was kept";
const std::string kFailed =
    "the disk failed while it was read or written; nothing of this change was kept";

const std::string kNotOpened =
    "it could not be opened, or what lies beside it (-wal, -shm, -journal); nothing of this change "
    "was kept";

const std::string kPerhapsKept =
    "the disk failed when it was asked to make the change lasting; keenfall log says whether it "
    "was "
    "kept";

class AFailingDisk : public ::testing::TestWithParam<Trouble> {
 protected:
  // At every point that the course has, or at some spread over it.
  void fail_all_over(const std::vector<Step>& steps, const std::vector<std::string>& sentences) {
    const ToldCourse told = testing::told_of(steps);
    const int points = points_in(steps);
    const int apart = std::max(1, points / points_wanted());
    for (int at = 1; at <= points && !HasFatalFailure(); at += apart) {
      SCOPED_TRACE("at operation " + std::to_string(at) + " of " + std::to_string(points));
      fail(steps, told, at, sentences);
    }
    std::cout << points << " operations";
    for (const auto& [sentence, times] : sentences_) {
      std::cout << "; " << times << " times: " << sentence;
    }
    std::cout << "\n";
  }

  static int points_in(const std::vector<Step>& steps) {
    const ScratchFolder folder("points");
    FailingDisk disk;
    disk.expect(GetParam(), 1 << 30);
    Bench bench{.path = folder.file("bench.keen")};
    run_steps(bench, steps);
    bench.notebook.reset();
    return disk.operations();
  }

  void fail(const std::vector<Step>& steps,
            const ToldCourse& told,
            int at,
            const std::vector<std::string>& sentences) {
    const ScratchFolder folder("failing");
    FailingDisk disk;
    disk.expect(GetParam(), at);
    Bench bench{.path = folder.file("bench.keen")};
    const Course course = run_steps(bench, steps);
    if (course.steps_done < steps.size()) {
      EXPECT_THAT(sentences, ::testing::Contains(course.refusal));
      ++sentences_[course.refusal];
      EXPECT_TRUE(course.steps_done > 0 || std::filesystem::is_empty(folder.path()));
    }
    const bool was_open = bench.notebook.has_value();
    if (at % 3 == 0) bench.notebook.reset();  // closed while nothing is well
    disk.mend();
    if (at % 3 == 1) bench.notebook.reset();  // else the same goes on
    std::size_t done = course.steps_done;
    if (done > 0) {
      open_if_closed(bench);
      const bool may_be_kept = course.refusal == kPerhapsKept;
      if (may_be_kept && state_of(*bench.notebook) == told.states[done + 1]) ++done;
      look_at(*bench.notebook, told.states[done]);
    }
    if (HasFatalFailure()) return;
    if (!was_open) bench.notebook.reset();
    go_on(bench, {steps.begin() + static_cast<std::ptrdiff_t>(done), steps.end()});
    open_if_closed(bench);
    look_at(*bench.notebook, told.states.back());
  }

  static void open_if_closed(Bench& bench) {
    if (bench.notebook) return;
    auto opened = Notebook::open_to_write(bench.path, kOpener);
    ASSERT_TRUE(opened) << opened.error().sentence;
    bench.notebook.emplace(std::move(*opened));
  }

  static void look_at(const Notebook& notebook, const NotebookState& told) {
    EXPECT_EQ(check(notebook), std::vector<std::string>{});
    const NotebookState state = state_of(notebook);
    ASSERT_TRUE(state == told) << state.journal.size() << " entries instead of "
                               << told.journal.size();
  }

  static void go_on(Bench& bench, const std::vector<Step>& steps) {
    const Course course = run_steps(bench, steps);
    ASSERT_EQ(course.steps_done, steps.size()) << course.refusal;
  }

  std::map<std::string, int> sentences_;
};

class AFullDisk : public AFailingDisk {};

TEST_P(AFullDisk, RefusesTheChangeAndKeepsWhatWasThere) {
  fail_all_over(testing::scripted_steps(), {kFull});
  fail_all_over(testing::random_steps(5, 25), {kFull});
}

INSTANTIATE_TEST_SUITE_P(Where,
                         AFullDisk,
                         ::testing::Values(Trouble::full, Trouble::full_for_all),
                         [](const auto& tested) {
                           return tested.param == Trouble::full ? "FilesCannotGrow" : "NoWriteFits";
                         });

class ABrokenDisk : public AFailingDisk {};

TEST_P(ABrokenDisk, RefusesTheChangeAndKeepsWhatWasThere) {
  fail_all_over(testing::scripted_steps(), {kFailed, kNotOpened, kPerhapsKept});
  fail_all_over(testing::random_steps(5, 25), {kFailed, kNotOpened, kPerhapsKept});
}

// What check says of such a disk is that something could not be read, not that it is damaged.
TEST_P(ABrokenDisk, NeverGivesAWrongNumberOrFindsDamage) {
  const ScratchFolder folder("reading");
  FailingDisk disk;
  Bench bench{.path = folder.file("bench.keen")};
  run_steps(bench, testing::scripted_steps());
  open_if_closed(bench);
  const NotebookState told = state_of(*bench.notebook);
  bench.notebook.reset();
  const auto read = [&] {
    const auto notebook = Notebook::open_to_read(bench.path);
    ASSERT_TRUE(notebook) << notebook.error().sentence;
    const auto findings = check(*notebook);
    for (const std::string& finding : findings) {
      EXPECT_THAT(finding,
                  ::testing::ContainsRegex("cannot be read: (the disk failed|disk I/O error)"));
    }
    ASSERT_TRUE(state_of(*notebook) == told);
  };
  disk.expect(GetParam(), 1 << 30);
  read();
  const int points = disk.operations();
  const int apart = std::max(1, points / points_wanted());
  for (int at = 1; at <= points && !HasFatalFailure(); at += apart) {
    SCOPED_TRACE("at operation " + std::to_string(at) + " of " + std::to_string(points));
    disk.expect(GetParam(), at);
    try {
      read();
    } catch (const NotebookFailure& failure) {
      EXPECT_THAT((std::vector{kFailed, kNotOpened}), ::testing::Contains(failure.what()));
    }
  }
  std::cout << points << " operations\n";
}

INSTANTIATE_TEST_SUITE_P(Where,
                         ABrokenDisk,
                         ::testing::Values(Trouble::fails_once, Trouble::fails),
                         [](const auto& tested) {
                           return tested.param == Trouble::fails ? "ItStaysSo" : "OnlyOnce";
                         });

}  // namespace
}  // namespace keenfall::notebook
