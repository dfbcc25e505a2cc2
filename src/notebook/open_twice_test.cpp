// A notebook that is open more than once: in one process, by other names, and while it is written.
#include "notebook/check.h"
#include "notebook/content.h"
#include "notebook/in_a_process_test.h"
#include "notebook/kept_trials.h"
#include "notebook/made_notebook.h"
#include "notebook/notebook.h"

#include <gtest/gtest.h>

#include <sqlite3.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::Bell;
using testing::kOpener;
using testing::ScratchFolder;

class ANotebookOpenTwice : public ::testing::Test {
 protected:
  ANotebookOpenTwice() {
    EXPECT_TRUE(Notebook::create(path_, {.uid = "u", .made_by = "t"}, kOpener));
  }

  static Authorship by(const std::string& client_id) {
    return {.client_id = client_id, .at_utc = "2026-11-26T12:00:00Z", .who = "R."};
  }

  // Opens it to write, and again in every other way; then takes a trial and is killed.
  [[noreturn]] void write_and_be_killed(const Bell& is_open, const Bell& go_on) const {
    auto writer = Notebook::open_to_write(path_, kOpener);
    const bool is_known = begins_as_notebook(path_);
    const bool is_read = Notebook::open_to_read(path_).has_value();
    const bool is_written = Notebook::open_to_write(path_, kOpener).has_value();
    if (!is_known || !is_read || is_written) _exit(1);
    is_open.ring();
    if (!go_on.wait() || !take(*writer, a_trial(), {}, by("c1"))) _exit(2);
    kill(getpid(), SIGKILL);
    _exit(3);
  }

  ScratchFolder scratch_{::testing::UnitTest::GetInstance()->current_test_info()->name()};
  std::string path_ = scratch_.file("bench.keen");
};

TEST_F(ANotebookOpenTwice, KeepsAnAcknowledgedChangeWhenItsProcessIsKilled) {
  const Bell is_open;
  const Bell go_on;
  const pid_t child = fork();
  if (child == 0) write_and_be_killed(is_open, go_on);
  ASSERT_TRUE(is_open.wait());

  EXPECT_TRUE(Notebook::open_to_read(path_));  // and closed again, by another process
  go_on.ring();
  int status = 0;
  waitpid(child, &status, 0);

  ASSERT_TRUE(WIFSIGNALED(status)) << WEXITSTATUS(status);
  const Notebook notebook = std::move(*Notebook::open_to_read(path_));
  EXPECT_EQ(notebook.journal().size(), 1U);
  ASSERT_TRUE(kept_trial(notebook, "matting"));
  EXPECT_EQ(*kept_trial(notebook, "matting"), a_trial());
}

TEST_F(ANotebookOpenTwice, HasOneWriterAlsoWhereOneCameByALink) {
  std::filesystem::create_directory(scratch_.path() / "links");
  const std::string link = scratch_.file("links/other.keen");
  std::filesystem::create_symlink("../bench.keen", link);

  {
    const auto by_name = Notebook::open_to_write(path_, kOpener);
    ASSERT_TRUE(by_name);
    const auto by_link = Notebook::open_to_write(link, kOpener);
    ASSERT_FALSE(by_link);
    EXPECT_NE(by_link.error().sentence.find("one writes at a time"), std::string::npos);
    EXPECT_EQ(by_link.error().place.file, link);
  }
  const auto by_link = Notebook::open_to_write(link, kOpener);
  ASSERT_TRUE(by_link);
  EXPECT_FALSE(Notebook::open_to_write(path_, kOpener));
  EXPECT_TRUE(std::filesystem::exists(path_ + ".writer"));
}

TEST_F(ANotebookOpenTwice, IsSeenAsOfOneMomentWhileAnotherWrites) {
  Notebook writer = std::move(*Notebook::open_to_write(path_, kOpener));
  const Notebook reader = std::move(*Notebook::open_to_read(path_));
  {
    const OneMoment moment(reader);
    EXPECT_TRUE(reader.journal().empty());
    ASSERT_TRUE(take(writer, a_trial(), {}, by("c1")));

    EXPECT_TRUE(reader.journal().empty());
    EXPECT_TRUE(trial_names(reader).empty());
    EXPECT_TRUE(check(reader).empty());
    each_content_row(reader, "reading", [](const ContentRow&) { ADD_FAILURE(); });
  }
  EXPECT_EQ(reader.journal().size(), 1U);
  EXPECT_EQ(*kept_trial(reader, "matting"), a_trial());
}

// ":memory:" and names that begin with "file:" mean something else to SQLite.
TEST_F(ANotebookOpenTwice, IsAFileWhateverItIsCalled) {
  const auto before = std::filesystem::current_path();
  std::filesystem::current_path(scratch_.path());
  for (const std::string name :
       {":memory:", "file:a.keen", "file::memory:?cache=shared", "#?%.keen"}) {
    {
      auto made = Notebook::create(name, {.uid = "u", .made_by = "t"}, kOpener);
      ASSERT_TRUE(made) << name;
      ASSERT_TRUE(take(*made, a_trial(), {}, by("c1"))) << name;
      EXPECT_TRUE(made->back_up_to(name + "copy")) << name;
    }
    for (const std::string& file : {name, name + "copy"}) {
      const auto opened = Notebook::open_to_read(file);
      ASSERT_TRUE(opened) << file << opened.error().sentence;
      EXPECT_EQ(*kept_trial(*opened, "matting"), a_trial()) << file;
    }
  }
  std::filesystem::current_path(before);
}

TEST_F(ANotebookOpenTwice, IsNotLookedForInAPipe) {
  const std::string pipe_path = scratch_.file("pipe");
  ASSERT_EQ(mkfifo(pipe_path.c_str(), 0600), 0);
  std::fstream both(pipe_path,
                    std::ios::in | std::ios::out);  // so that neither waits for the other
  both << "blade,medium,run,cuts,reading\n" << std::flush;

  alarm(60);  // rather than for ever, where it is read
  EXPECT_FALSE(begins_as_notebook(pipe_path));

  std::string line;
  std::getline(both, line);
  alarm(0);
  EXPECT_EQ(line, "blade,medium,run,cuts,reading");
}

TEST_F(ANotebookOpenTwice, IsNotWholeWithoutTheRowThatSaysWhoseItIs) {
  sqlite3* other = nullptr;
  ASSERT_EQ(sqlite3_open(path_.c_str(), &other), SQLITE_OK);
  EXPECT_EQ(sqlite3_exec(other, "DELETE FROM notebook", nullptr, nullptr, nullptr), SQLITE_OK);
  sqlite3_close(other);

  const auto findings = check(*Notebook::open_to_read(path_));

  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings.front(),
            "The table notebook: it has 0 rows, and a notebook has one there, which says whose it "
            "is.");
}

}  // namespace
}  // namespace keenfall::notebook
