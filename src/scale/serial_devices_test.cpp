#include "scale/serial_devices.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace keenfall::scale {
namespace {

namespace fs = std::filesystem;
using ::testing::ElementsAre;
using ::testing::IsEmpty;

class SerialDevices : public ::testing::Test {
 protected:
  void SetUp() override { fs::create_directories(folder_); }
  void TearDown() override { fs::remove_all(folder_); }

  [[nodiscard]] std::string in(const std::string& name) const { return (folder_ / name).string(); }
  void put(const std::string& name) const { std::ofstream(in(name)) << ""; }

  const fs::path folder_ = fs::temp_directory_path() / ("keenfall-dev-" + std::to_string(getpid()));
};

TEST_F(SerialDevices, AreThoseOfUsbAlone) {
  for (const std::string name : {"ttyUSB1", "ttyUSB0", "ttyACM0", "ttyS0", "null"}) put(name);

  EXPECT_THAT(serial_devices(folder_.string()),
              ElementsAre(in("ttyACM0"), in("ttyUSB0"), in("ttyUSB1")));
}

TEST_F(SerialDevices, OneThatHasALastingNameIsNamedByIt) {
  for (const std::string name : {"ttyUSB0", "ttyUSB1"}) put(name);
  fs::create_directories(folder_ / "serial" / "by-id");
  fs::create_symlink("../../ttyUSB1", in("serial/by-id/usb-serial-port0"));
  fs::create_symlink("../../ttyUSB9", in("serial/by-id/usb-gone-port0"));

  EXPECT_THAT(serial_devices(folder_.string()),
              ElementsAre(in("serial/by-id/usb-serial-port0"), in("ttyUSB0")));
}

TEST_F(SerialDevices, WithoutAFolderThereAreNone) {
  EXPECT_THAT(serial_devices(in("nowhere")), IsEmpty());
}

}  // namespace
}  // namespace keenfall::scale
