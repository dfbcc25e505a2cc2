// A notebook whose file is renamed, replaced or given a second name while it is open for writing:
// nothing that was acknowledged is lost, and nothing is acknowledged that would be.
#include "notebook/a_notebook_test.h"
#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/strike.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::ANotebook;
using testing::kOpener;

class AMovedNotebook : public ANotebook {
 protected:
  AMovedNotebook() {
    Notebook notebook = made();
    EXPECT_TRUE(take(notebook, a_trial(), {}, next()));
  }

  [[nodiscard]] base::Result<Struck> void_run_of(Notebook& notebook, const std::string& blade) {
    return strike(
        notebook, {.trial = "matting", .blade = blade, .run = "1", .reason = "burr"}, next());
  }

  static void expect_whole(const std::string& path, std::size_t entries) {
    const auto notebook = Notebook::open_to_read(path);
    ASSERT_TRUE(notebook) << notebook.error().sentence;
    EXPECT_EQ(check(*notebook), std::vector<std::string>{});
    EXPECT_EQ(notebook->journal().size(), entries);
  }

  std::string other_ = scratch_.file("other.keen");
};

constexpr const char* kMoved =
    "The notebook was moved, renamed or replaced while it was open for writing, so nothing of this "
    "change was kept.";

TEST_F(AMovedNotebook, KeepsWhatWasAcknowledgedAndRefusesWhatComesAfter) {
  {
    Notebook notebook = std::move(*Notebook::open_to_write(path_, kOpener));
    ASSERT_TRUE(void_run_of(notebook, "A"));
    std::filesystem::rename(path_, other_);

    const auto refused = void_run_of(notebook, "B");

    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().sentence, kMoved);
    EXPECT_EQ(refused.error().place.file, path_);
  }
  expect_whole(other_, 2);
  EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder_), {}), 1);
}

TEST_F(AMovedNotebook, HasOneWriterByItsNewNameToo) {
  const Notebook first = std::move(*Notebook::open_to_write(path_, kOpener));
  std::filesystem::rename(path_, other_);

  for (int times = 0; times < 2; ++times) {
    const auto second = Notebook::open_to_write(other_, kOpener);

    ASSERT_FALSE(second);
    EXPECT_EQ(second.error().sentence,
              "The notebook is being written to by another process, which opened it by another "
              "name, and one writes at a time.");
    EXPECT_EQ(second.error().place.file, other_);
  }
}

TEST_F(AMovedNotebook, IsWrittenToAgainOnceItIsClosed) {
  { const Notebook notebook = std::move(*Notebook::open_to_write(path_, kOpener)); }
  std::filesystem::rename(path_, other_);

  Notebook notebook = std::move(*Notebook::open_to_write(other_, kOpener));

  EXPECT_TRUE(void_run_of(notebook, "A"));
}

TEST_F(AMovedNotebook, IsNotMistakenForTheFileThatTookItsPlace) {
  ASSERT_TRUE(Notebook::open_to_read(path_)->back_up_to(other_));
  {
    Notebook notebook = std::move(*Notebook::open_to_write(path_, kOpener));
    ASSERT_TRUE(void_run_of(notebook, "A"));
    std::filesystem::rename(other_, path_);

    const auto refused = void_run_of(notebook, "B");

    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().sentence, kMoved);
  }
  expect_whole(path_, 1);
}

TEST_F(AMovedNotebook, IsNotWrittenToWhileItHasASecondName) {
  const std::string sentence =
      "This file has 2 names (hard links). Changes lie beside one of them for a while and would be "
      "missed by who comes by another, so it is not written to.";
  Notebook open = std::move(*Notebook::open_to_write(path_, kOpener));
  std::filesystem::create_hard_link(path_, other_);

  const auto refused = void_run_of(open, "A");
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().sentence, sentence);
  const Notebook closed = std::move(open);
  const auto by_other = Notebook::open_to_write(other_, kOpener);
  ASSERT_FALSE(by_other);

  std::filesystem::remove(other_);
  expect_whole(path_, 1);
}

TEST_F(AMovedNotebook, IsNotOpenedForWritingWhereItHasASecondName) {
  std::filesystem::create_hard_link(path_, other_);
  for (const std::string& name : {path_, other_}) {
    const auto opened = Notebook::open_to_write(name, kOpener);

    ASSERT_FALSE(opened);
    EXPECT_EQ(opened.error().sentence.substr(0, 32), "This file has 2 names (hard link");
    EXPECT_EQ(opened.error().place.file, name);
    expect_whole(name, 1);
  }
  std::filesystem::remove(other_);
  EXPECT_TRUE(Notebook::open_to_write(path_, kOpener));
}

}  // namespace
}  // namespace keenfall::notebook
