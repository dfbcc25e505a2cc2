// Whoever may write nothing, or has no room to, reads what is there as of one moment: never torn,
// whatever others write meanwhile, and never without what was acknowledged before.
#include "notebook/check.h"
#include "notebook/in_a_process_test.h"
#include "notebook/kept_trials.h"
#include "notebook/made_notebook.h"
#include "notebook/notebook.h"

#include <gtest/gtest.h>

#include <sys/resource.h>

#include <csignal>
#include <filesystem>
#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::Bell;
using testing::kOpener;
using testing::Rights;
using testing::said_in_a_process;
using testing::said_without_rights;
using testing::ScratchFolder;

trials::Trial a_long_trial(int runs) {
  trials::Trial trial = a_trial();
  trial.name = "long";
  const trials::Run first = trial.runs.front();
  trial.runs.clear();
  for (int r = 0; r < runs; ++r) {
    trial.runs.push_back(first);
    trial.runs.back().name = std::to_string(r);
  }
  return trial;
}

class ReadingWithoutRights : public ::testing::Test {
 protected:
  ReadingWithoutRights() {
    std::filesystem::permissions(scratch_.path(), std::filesystem::perms(0755));
    Notebook notebook = std::move(*Notebook::create(path_, {.uid = "u", .made_by = "t"}, kOpener));
    EXPECT_TRUE(take(notebook, a_long_trial(40), {}, next()));
  }

  Authorship next() {
    return {.client_id = "c" + std::to_string(++changes_), .at_utc = "", .who = "R."};
  }

  // "2 entries, whole": what is read, or what is wrong.
  static std::string words_of(const Notebook& notebook) {
    const auto findings = check(notebook);
    return std::to_string(notebook.journal().size()) + " entries, " +
           (findings.empty() ? "whole" : findings.front());
  }
  static std::string what_is_read(const std::string& path) {
    const auto opened = Notebook::open_to_read(path);
    return opened ? words_of(*opened) : opened.error().sentence;
  }

  // What `work` says where no file can become longer than it is: as on a full disk.
  static std::string said_without_room(const std::function<std::string()>& work) {
    return said_in_a_process(Rights::same, [&] {
      (void)std::signal(SIGXFSZ, SIG_IGN);
      const rlimit none{.rlim_cur = 0, .rlim_max = 0};
      EXPECT_EQ(setrlimit(RLIMIT_FSIZE, &none), 0);
      return work();
    });
  }

  ScratchFolder scratch_{::testing::UnitTest::GetInstance()->current_test_info()->name()};
  std::string path_ = scratch_.file("bench.keen");
  int changes_ = 0;
};

TEST_F(ReadingWithoutRights, SeesOneMomentWhileAnotherWritesAndCloses) {
  const Bell is_open;
  const Bell go_on;
  const auto read = [&] {
    const auto opened = Notebook::open_to_read(path_);
    const OneMoment moment(*opened);
    is_open.ring();
    return go_on.wait() ? words_of(*opened) : "nobody wrote";
  };
  const auto write = [&] {
    ASSERT_TRUE(is_open.wait());
    {
      Notebook notebook = std::move(*Notebook::open_to_write(path_, kOpener));
      EXPECT_TRUE(take(notebook, a_trial(), {}, next()));
      EXPECT_TRUE(notebook.undo(2, next()));
    }
    go_on.ring();
  };

  const std::string said = said_in_a_process(Rights::none, read, write);

  EXPECT_EQ(said, "1 entries, whole");
  EXPECT_EQ(said_without_rights([&] { return what_is_read(path_); }), "3 entries, whole");
}

TEST_F(ReadingWithoutRights, SeesWhatAnOpenWriterWasToldIsKept) {
  Notebook writer = std::move(*Notebook::open_to_write(path_, kOpener));
  EXPECT_EQ(said_without_rights([&] { return what_is_read(path_); }), "1 entries, whole");

  for (int entries = 2; entries < 5; ++entries) {
    ASSERT_TRUE(take(writer, a_long_trial(40 + entries), {}, next()));

    EXPECT_EQ(said_without_rights([&] { return what_is_read(path_); }),
              std::to_string(entries) + " entries, whole");
  }
}

TEST_F(ReadingWithoutRights, NeedsNoRoomOnTheDisk) {
  EXPECT_EQ(said_without_room([&] { return what_is_read(path_); }), "1 entries, whole");
  EXPECT_EQ(said_without_room([&] { return what_is_read(path_); }), "1 entries, whole");
}

TEST_F(ReadingWithoutRights, NeedsNoRoomForALogThatAKilledWriterLeft) {
  const std::string left = scratch_.file("left.keen");
  {
    Notebook writer = std::move(*Notebook::open_to_write(path_, kOpener));
    ASSERT_TRUE(take(writer, a_trial(), {}, next()));
    for (const char* ending : {"", "-wal", "-shm"}) {
      std::filesystem::copy_file(path_ + ending, left + ending);
    }
  }

  EXPECT_EQ(said_without_room([&] { return what_is_read(left); }), "2 entries, whole");
  EXPECT_EQ(what_is_read(left), "2 entries, whole");
}

}  // namespace
}  // namespace keenfall::notebook
