#include "workbench/written_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include <unistd.h>

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

  static std::string content_at(const std::string& path) {
    std::ifstream file(path);
    return {std::istreambuf_iterator<char>(file), {}};
  }

  std::filesystem::path folder_ =
      std::filesystem::temp_directory_path() / ("keenfall_written_" + std::to_string(getpid()));
};

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
