#include "cli/desktop.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cerrno>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <string>
#include <thread>

#include <sys/wait.h>
#include <unistd.h>

namespace keenfall::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using namespace std::chrono_literals;

constexpr const char* kAddress = "http://127.0.0.1:17034/#key=a-Secret_0";

std::string content_of(const std::filesystem::path& path) {
  std::ifstream file(path);
  return {std::istreambuf_iterator<char>(file), {}};
}

bool comes_true(const std::function<bool()>& condition) {
  const auto give_up = std::chrono::steady_clock::now() + 20s;
  while (!condition() && std::chrono::steady_clock::now() < give_up) {
    std::this_thread::sleep_for(10ms);
  }
  return condition();
}

// With an xdg-open that writes down what it was given.
class ADesktop : public ::testing::Test {
 protected:
  ADesktop() {
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directories(folder_ / "bin");
    std::filesystem::create_directories(folder_ / "runtime");
    std::ofstream(folder_ / "bin" / "xdg-open") << "#!/bin/sh\n"
                                                   "tr '\\0' '\\n' < /proc/$$/cmdline > "
                                                << (folder_ / "begun_with").string()
                                                << "\n"
                                                   "printf '%s' \"$1\" > "
                                                << (folder_ / "file").string()
                                                << "\n"
                                                   "cp \"$1\" "
                                                << (folder_ / "page").string()
                                                << "\n"
                                                   "stat -c '%a' \"$1\" \"$(dirname \"$1\")\" > "
                                                << (folder_ / "modes").string()
                                                << "\n"
                                                   "touch "
                                                << (folder_ / "done").string() << "\n";
    std::filesystem::permissions(folder_ / "bin" / "xdg-open", std::filesystem::perms::owner_all);
    setenv("PATH", ((folder_ / "bin").string() + ":" + path_).c_str(), 1);
  }
  ~ADesktop() override {
    setenv("PATH", path_.c_str(), 1);
    std::filesystem::remove_all(folder_);
  }

  bool is_shown() {
    return comes_true([&] { return std::filesystem::exists(folder_ / "done"); });
  }

  std::string path_ = std::getenv("PATH");
  std::filesystem::path folder_ =
      std::filesystem::temp_directory_path() / ("keenfall_desktop_" + std::to_string(getpid()));
};

TEST_F(ADesktop, IsGivenAFileForThisUserAloneThatLeadsToTheAddress) {
  ASSERT_TRUE(show_on_desktop(kAddress, (folder_ / "runtime").string(), 1s));
  ASSERT_TRUE(is_shown());

  EXPECT_THAT(content_of(folder_ / "page"), HasSubstr(std::string("url=") + kAddress + "\""));
  EXPECT_EQ(content_of(folder_ / "modes"), "600\n700\n");
  EXPECT_THAT(content_of(folder_ / "file"), HasSubstr((folder_ / "runtime").string() + "/"));
}

TEST_F(ADesktop, TellsTheKeyToNoProgramThatOthersSee) {
  ASSERT_TRUE(show_on_desktop(kAddress, (folder_ / "runtime").string(), 1s));
  ASSERT_TRUE(is_shown());

  EXPECT_THAT(content_of(folder_ / "begun_with"), HasSubstr("keenfall.html"));
  EXPECT_THAT(content_of(folder_ / "begun_with"), Not(HasSubstr("Secret")));
}

TEST_F(ADesktop, IsLeftWithNoFileAndNoChildAfterwards) {
  ASSERT_TRUE(show_on_desktop(kAddress, (folder_ / "runtime").string(), 1s));

  EXPECT_EQ(waitpid(-1, nullptr, WNOHANG), -1);
  EXPECT_EQ(errno, ECHILD);
  ASSERT_TRUE(is_shown());
  EXPECT_TRUE(comes_true([&] { return std::filesystem::is_empty(folder_ / "runtime"); }));
}

TEST_F(ADesktop, UsesTheFolderForTemporaryFilesWhereThereIsNoOther) {
  ASSERT_TRUE(show_on_desktop(kAddress, "", 1s));
  ASSERT_TRUE(is_shown());

  EXPECT_EQ(content_of(folder_ / "modes"), "600\n700\n");
  EXPECT_TRUE(comes_true([&] { return !std::filesystem::exists(content_of(folder_ / "file")); }));
}

TEST_F(ADesktop, IsNotShownWhatIsNoAddressOfOurs) {
  EXPECT_FALSE(show_on_desktop("http://127.0.0.1/\"><script>", (folder_ / "runtime").string(), 1s));
  EXPECT_TRUE(std::filesystem::is_empty(folder_ / "runtime"));
}

}  // namespace
}  // namespace keenfall::cli
