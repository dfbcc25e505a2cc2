// Making a notebook or a copy never takes away what lies beside its name, and what another tool or
// disk does to a notebook's file is seen.
#include "notebook/a_notebook_test.h"
#include "notebook/check.h"
#include "notebook/failing_disk.h"
#include "notebook/kept_trials.h"
#include "notebook/notebook_failure.h"
#include "notebook/notebook_file.h"

#include <gtest/gtest.h>

#include <sqlite3.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::ANotebook;
using testing::FailingDisk;
using testing::kOpener;
using testing::Trouble;

class ANewName : public ANotebook {
 protected:
  void put(const std::string& path, const std::string& content) {
    std::ofstream(path, std::ios::binary) << content;
  }
  static std::string content_at(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  std::string sentence_of_making() {
    const auto notebook = Notebook::create(path_, {.uid = "u", .made_by = "t"}, kOpener);
    return notebook ? "made" : notebook.error().sentence;
  }
  std::size_t files() {
    return std::size_t(std::distance(std::filesystem::directory_iterator(folder_), {}));
  }
};

TEST_F(ANewName, IsRefusedWhereAnotherNotebooksLastChangesLieBesideIt) {
  for (const std::string ending : {"-wal", "-journal"}) {
    put(path_ + ending, "last changes");
    const std::string sentence =
        " can be made here: " + path_ + ending +
        " holds the last changes of another notebook, which had this name. It was left as it is.";

    EXPECT_EQ(sentence_of_making(), "No notebook" + sentence);
    EXPECT_EQ(content_at(path_ + ending), "last changes");
    EXPECT_EQ(files(), 1U);
    std::filesystem::remove(path_ + ending);
  }
}

TEST_F(ANewName, OfACopyIsRefusedThereToo) {
  const Notebook notebook = made();
  const std::string copy = scratch_.file("copy.keen");
  put(copy + "-wal", "last changes");

  const auto refused = notebook.back_up_to(copy);

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().sentence.substr(0, 30),
            "No copy can be made here: " + copy.substr(0, 4));
  EXPECT_EQ(content_at(copy + "-wal"), "last changes");
  EXPECT_FALSE(std::filesystem::exists(copy));
}

TEST_F(ANewName, ThatIsTakenKeepsAllThatLiesBesideIt) {
  put(path_, "a file");
  for (const char* ending : {"-wal", "-shm", "-journal", ".writer"}) put(path_ + ending, ending);

  EXPECT_EQ(sentence_of_making(), "There is something of this name already; it was left as it is.");

  EXPECT_EQ(content_at(path_), "a file");
  for (const char* ending : {"-wal", "-shm", "-journal", ".writer"}) {
    EXPECT_EQ(content_at(path_ + ending), ending);
  }
}

TEST_F(ANewName, MayHaveAnEmptyLogBesideIt) {
  put(path_ + "-wal", "");

  EXPECT_EQ(sentence_of_making(), "made");

  EXPECT_EQ(files(), 1U);
}

TEST_F(ANewName, OfACopyIsNamedWhereTheDiskHasNoRoomForIt) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {}, next()));
  const std::string copy = scratch_.file("copy.keen");
  FailingDisk disk;
  disk.expect(Trouble::full, 1);

  const auto refused = notebook.back_up_to(copy);

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().sentence,
            "There is no room left on the disk for the copy; none was made.");
  EXPECT_EQ(refused.error().place.file, copy);
  EXPECT_FALSE(std::filesystem::exists(copy));
}

// As where pages cannot be had just now: SQLite does not copy out of a change that is being made.
TEST_F(ANewName, OfACopyIsNotGivenToOneThatLacksPages) {
  const Notebook notebook = made();
  const std::string copy = scratch_.file("copy.keen");
  notebook.file().database.exec("BEGIN IMMEDIATE");

  std::string said;
  try {
    said = notebook.back_up_to(copy).value_or("no copy");
  } catch (const NotebookFailure& failure) {
    said = failure.what();
  }

  EXPECT_EQ(said, "another program kept it busy for too long; nothing was changed, try again");
  EXPECT_FALSE(std::filesystem::exists(copy));
}

TEST_F(ANewName, IsNotGivenWhereTheDiskAllowsNoLog) {
  sqlite3_vfs* const usual = sqlite3_vfs_find(nullptr);
  sqlite3_vfs_register(sqlite3_vfs_find("unix-dotfile"), 1);  // has no shared memory
  std::string said;
  try {
    said = sentence_of_making();
  } catch (const NotebookFailure& failure) {
    said = failure.what();
  }
  sqlite3_vfs_register(usual, 1);

  EXPECT_EQ(said, "its disk does not allow the log that a notebook is written with");
  EXPECT_FALSE(std::filesystem::exists(path_));
}

TEST_F(ANewName, IsOpenedAfterAnotherToolAnalyzedTheFile) {
  {
    Notebook notebook = made();
    ASSERT_TRUE(take(notebook, a_trial(), {}, next()));
  }
  sqlite3* tool = nullptr;
  ASSERT_EQ(sqlite3_open(path_.c_str(), &tool), SQLITE_OK);
  EXPECT_EQ(sqlite3_exec(tool, "ANALYZE", nullptr, nullptr, nullptr), SQLITE_OK);
  sqlite3_close(tool);

  EXPECT_TRUE(Notebook::open_to_read(path_));
  Notebook notebook = std::move(*Notebook::open_to_write(path_, kOpener));
  EXPECT_TRUE(notebook.undo(1, next()));
  EXPECT_EQ(check(notebook), std::vector<std::string>{});
}

}  // namespace
}  // namespace keenfall::notebook
