#include "page/data_address.h"

#include <gtest/gtest.h>

#include <string>

namespace keenfall::page {
namespace {

TEST(ACsvAddress, EncodesWhatMayNotStandInOne) {
  EXPECT_EQ(csv_address("a,b\n1 %,\"x\"<\xC3\xA4>#"),
            "data:text/csv;charset=utf-8,a,b%0A1%20%25,%22x%22%3C%C3%A4%3E%23");
  EXPECT_EQ(csv_address(""), "data:text/csv;charset=utf-8,");
}

TEST(ACsvAddress, HoldsNothingThatEndsAnAttribute) {
  std::string every;
  for (int byte = 0; byte < 256; ++byte) every += static_cast<char>(byte);

  const std::string address = csv_address(every);

  EXPECT_EQ(address.find_first_of("\"<>&' \n\r\t"), std::string::npos);
}

}  // namespace
}  // namespace keenfall::page
