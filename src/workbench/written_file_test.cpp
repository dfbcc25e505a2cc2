#include "workbench/written_file.h"

#include "workbench/new_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace keenfall::workbench {
namespace {

using ::testing::HasSubstr;

class AWrittenFile : public ::testing::Test {
 protected:
  void SetUp() override {
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directory(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  static void put(const std::string& path, const std::string& content) {
    std::ofstream(path, std::ios::binary) << content;
  }
  static std::string content_at(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  [[nodiscard]] std::size_t files() const {
    return std::size_t(std::distance(std::filesystem::directory_iterator(folder_), {}));
  }

  std::filesystem::path folder_ = std::filesystem::temp_directory_path() /
                                  ("keenfall_written_" + std::to_string(getpid()) + "_" +
                                   ::testing::UnitTest::GetInstance()->current_test_info()->name());
  std::string path_ = folder_ / "out.csv";
};

TEST_F(AWrittenFile, HoldsWhatItWasToHoldAndNothingIsLeftBesideIt) {
  EXPECT_FALSE(write_whole_file(path_, "blade,cuts\n", Existing::is_kept));

  EXPECT_EQ(content_at(path_), "blade,cuts\n");
  EXPECT_EQ(files(), 1U);
}

TEST_F(AWrittenFile, MayBeEmptyAndHaveTheLongestName) {
  const std::string longest = folder_ / std::string(255, 'n');

  EXPECT_FALSE(write_whole_file(longest, "", Existing::is_kept));

  EXPECT_TRUE(std::filesystem::is_empty(longest));
}

TEST_F(AWrittenFile, LeavesOnesOwnFilesBesideItAlone) {
  put(path_ + ".unfinished", "mine");
  put(folder_ / "precious", "precious");
  std::filesystem::create_symlink("precious", folder_ / "other.csv.unfinished");

  EXPECT_FALSE(write_whole_file(path_, "new", Existing::is_replaced));
  EXPECT_FALSE(write_whole_file(folder_ / "other.csv", "new", Existing::is_replaced));

  EXPECT_EQ(content_at(path_ + ".unfinished"), "mine");
  EXPECT_EQ(content_at(folder_ / "precious"), "precious");
}

TEST_F(AWrittenFile, DoesNotTakeANameThatIsTaken) {
  put(path_, "mine");
  std::filesystem::create_symlink("nowhere",
                                  folder_ / "link.csv");  // taken, though nothing is there

  for (const std::string& taken : {path_, (folder_ / "link.csv").string()}) {
    const auto problem = write_whole_file(taken, "new", Existing::is_kept);

    ASSERT_TRUE(problem) << taken;
    EXPECT_EQ(problem->sentence,
              "The file \"" + taken +
                  "\" cannot be written: it exists already, and is left as it is; name a new "
                  "file.");
  }
  EXPECT_EQ(content_at(path_), "mine");
  EXPECT_TRUE(std::filesystem::is_symlink(folder_ / "link.csv"));
  EXPECT_EQ(files(), 2U);
}

TEST_F(AWrittenFile, KeepsItsRightsAndTheLinkToItWhenItIsReplaced) {
  put(path_, "old");
  std::filesystem::permissions(path_, std::filesystem::perms(0600));
  std::filesystem::create_symlink("out.csv", folder_ / "link.csv");

  EXPECT_FALSE(write_whole_file(folder_ / "link.csv", "new", Existing::is_replaced));

  EXPECT_TRUE(std::filesystem::is_symlink(folder_ / "link.csv"));
  EXPECT_EQ(content_at(path_), "new");
  EXPECT_EQ(std::filesystem::status(path_).permissions(), std::filesystem::perms(0600));
}

TEST_F(AWrittenFile, IsAsBeforeWhereThereIsNoRoomForTheNewOne) {
  put(path_, "old");
  const pid_t child = fork();
  if (child == 0) {
    (void)std::signal(SIGXFSZ, SIG_IGN);
    const rlimit few{.rlim_cur = 3, .rlim_max = 3};  // bytes a file may have
    if (setrlimit(RLIMIT_FSIZE, &few) != 0) _exit(2);
    const auto problem = write_whole_file(path_, "a new one", Existing::is_replaced);
    const bool is_told =
        problem &&
        problem->sentence == "The file \"" + path_ + "\" cannot be written: File too large.";
    _exit(is_told ? 0 : 1);
  }
  int status = 0;
  waitpid(child, &status, 0);

  EXPECT_EQ(status, 0);
  EXPECT_EQ(content_at(path_), "old");
  EXPECT_EQ(files(), 1U);
}

TEST_F(AWrittenFile, OrFolderTakesNoNameThatWasTakenMeanwhile) {
  for (const std::string made : {"file", "folder"}) {
    const std::filesystem::path from = folder_ / ("new " + made);
    const std::filesystem::path to = folder_ / made;
    if (made == "file") {
      put(from, "new");
      put(to, "mine");
    } else {
      std::filesystem::create_directory(from);
      std::filesystem::create_directory(to);  // an empty one would be replaced by plain renaming
    }

    EXPECT_EQ(give_lasting_name(from, to, Existing::is_kept), std::errc::file_exists);

    EXPECT_TRUE(std::filesystem::exists(from));
  }
  EXPECT_EQ(content_at(folder_ / "file"), "mine");
  EXPECT_FALSE(give_lasting_name(folder_ / "new folder", folder_ / "other", Existing::is_kept));
  EXPECT_FALSE(give_lasting_name(folder_ / "new file", folder_ / "file", Existing::is_replaced));
  EXPECT_EQ(content_at(folder_ / "file"), "new");
}

TEST_F(AWrittenFile, ThatIsThereIsKeptOrReplacedAsAsked) {
  const std::string path = folder_ / "answer.json";
  ASSERT_EQ(write_whole_file(path, "first", Existing::is_kept), std::nullopt);

  const auto problem = write_whole_file(path, "second", Existing::is_kept);

  ASSERT_TRUE(problem);
  EXPECT_EQ(problem->kind, base::ProblemKind::unreadable);
  EXPECT_THAT(problem->sentence, HasSubstr("it exists already, and is left as it is"));
  EXPECT_EQ(content_at(path), "first");
  EXPECT_EQ(write_whole_file(path, "third", Existing::is_replaced), std::nullopt);
  EXPECT_EQ(content_at(path), "third");
}

TEST_F(AWrittenFile, IsSeenInAdvanceNotToBeNewOrToHaveNoFolder) {
  const std::string path = folder_ / "answer.json";
  EXPECT_EQ(problem_with_new_file(path), std::nullopt);
  EXPECT_EQ(problem_with_new_file("a file in the present folder"), std::nullopt);

  ASSERT_EQ(write_whole_file(path, "first", Existing::is_kept), std::nullopt);
  EXPECT_EQ(problem_with_new_file(path), write_whole_file(path, "", Existing::is_kept));
  EXPECT_THAT(problem_with_new_file(folder_ / "none" / "answer.json")->sentence,
              HasSubstr("there is no folder \"" + (folder_ / "none").string() + "\""));
}

}  // namespace
}  // namespace keenfall::workbench
