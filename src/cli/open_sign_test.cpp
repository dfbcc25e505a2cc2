#include "cli/open_sign.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <atomic>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string>

#include <sys/stat.h>
#include <unistd.h>

namespace keenfall::cli {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

const OpenNow kOne = {.address = "http://127.0.0.1:17034/#key=one", .notebook = "/bench/a.keen"};
const OpenNow kOther = {.address = "http://127.0.0.1:40001/#key=other", .notebook = ""};

// A folder of this user's own, as a login makes it.
class OpenSigns : public ::testing::Test {
 protected:
  void SetUp() override {
    folder_ = ::testing::TempDir() + "keenfall_signs_" + std::to_string(getpid());
    std::filesystem::remove_all(folder_);
    ASSERT_EQ(mkdir(folder_.c_str(), S_IRWXU), 0);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  std::string folder_;
};

TEST_F(OpenSigns, TellWhereKeenfallIsOpenAndOnWhat) {
  const OpenSign sign(folder_, 17034, [] { return kOne; });

  EXPECT_THAT(open_now(folder_), ElementsAre(kOne));
}

TEST_F(OpenSigns, TellWhatIsOpenNowAndNotWhatWas) {
  const OpenNow next = {.address = kOne.address, .notebook = "/bench/next\nline.keen"};
  std::atomic<bool> is_next = false;
  const OpenSign sign(folder_, 17034, [&] { return is_next ? next : kOne; });

  is_next = true;

  EXPECT_THAT(open_now(folder_), ElementsAre(next));
}

TEST_F(OpenSigns, HangSideBySide) {
  const OpenSign other(folder_, 40001, [] { return kOther; });
  const OpenSign sign(folder_, 17034, [] { return kOne; });

  EXPECT_THAT(open_now(folder_), ElementsAre(kOne, kOther));
}

TEST_F(OpenSigns, AreTakenDownAtTheEnd) {
  std::optional<OpenSign> sign(std::in_place, folder_, 17034, [] { return kOne; });

  sign.reset();

  EXPECT_THAT(open_now(folder_), IsEmpty());
  EXPECT_TRUE(std::filesystem::is_empty(folder_ + "/keenfall"));
}

TEST_F(OpenSigns, OfAKilledKeenfallTellNothingAndGiveWay) {
  const std::string left = folder_ + "/keenfall/17034";
  std::filesystem::create_directory(folder_ + "/keenfall");
  std::ofstream(left) << "http://127.0.0.1:17034/#key=old\n";
  EXPECT_THAT(open_now(folder_), IsEmpty());

  const OpenSign sign(folder_, 17034, [] { return kOne; });

  EXPECT_THAT(open_now(folder_), ElementsAre(kOne));
}

TEST_F(OpenSigns, OfAnotherPlaceThanThisMachineAreNotFollowed) {
  const OpenSign sign(folder_, 17034, [] { return OpenNow{.address = "http://elsewhere/#key=x"}; });

  EXPECT_THAT(open_now(folder_), IsEmpty());
}

TEST_F(OpenSigns, AreNeitherPutUpNorReadWhereOthersMayEnter) {
  const OpenSign before(folder_, 17034, [] { return kOne; });
  ASSERT_EQ(chmod(folder_.c_str(), S_IRWXU | S_IXGRP), 0);

  const OpenSign sign(folder_, 40001, [] { return kOther; });

  EXPECT_THAT(open_now(folder_), IsEmpty());
  EXPECT_FALSE(std::filesystem::exists(folder_ + "/keenfall/40001"));
}

TEST_F(OpenSigns, AreNoneWithoutAFolderOrWithOneTooLongToName) {
  const std::string deep = folder_ + "/" + std::string(120, 'd');
  ASSERT_EQ(mkdir(deep.c_str(), S_IRWXU), 0);

  const OpenSign nowhere("", 17034, [] { return kOne; });
  const OpenSign too_long(deep, 17034, [] { return kOne; });

  EXPECT_THAT(open_now(""), IsEmpty());
  EXPECT_THAT(open_now(deep), IsEmpty());
}

}  // namespace
}  // namespace keenfall::cli
