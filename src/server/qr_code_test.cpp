// Read back by ZBar's zbarimg, which knows nothing of how it was drawn.
#include "server/qr_code.h"

#include "server/own_folder_test.h"

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <fstream>
#include <memory>
#include <string>

namespace keenfall::server {
namespace {

std::string read_back(const std::vector<std::string>& squares) {
  constexpr std::size_t kScale = 4;
  constexpr std::size_t kMargin = 4;
  const testing::OwnFolder scratch("qr");
  const std::size_t side = (squares.size() + 2 * kMargin) * kScale;
  std::ofstream picture(scratch.file("code.pgm"));
  picture << "P2\n" << side << " " << side << "\n1\n";
  for (std::size_t y = 0; y < side; ++y) {
    for (std::size_t x = 0; x < side; ++x) {
      const std::size_t row = y / kScale - kMargin;  // wraps around in the margin
      const std::size_t column = x / kScale - kMargin;
      const bool is_dark =
          row < squares.size() && column < squares.size() && squares[row][column] == '1';
      picture << (is_dark ? "0 " : "1 ");
    }
    picture << "\n";
  }
  picture.close();
  const std::string command = "zbarimg --nodbus --quiet --raw -Sbinary " + scratch.file("code.pgm");
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
  std::string text;
  std::array<char, 4096> some{};
  while (const std::size_t count = std::fread(some.data(), 1, some.size(), pipe.get())) {
    text.append(some.data(), count);
  }
  return text;
}

TEST(QrCode, IsReadBackByACamerasProgram) {
  for (const std::string text : {"http://192.168.1.5:17035/bench#code=K7MP-2WXR",
                                 "https://bench.example:17035/bench#code=2345-6789"}) {
    EXPECT_EQ(read_back(qr_code(text)), text);
  }
}

TEST(QrCode, IsNothingWhereTheTextIsTooLong) {
  EXPECT_TRUE(qr_code(std::string(3000, 'x')).empty());
}

TEST(QrCode, IsDrawnWithItsMarginTwoRowsInALine) {
  EXPECT_EQ(qr_drawn({"10", "11"}), "██████████\n██████████\n████ ▀████\n██████████\n██████████\n");
}

}  // namespace
}  // namespace keenfall::server
