#include "notebook/random_uid.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cstddef>
#include <set>
#include <string>

namespace keenfall::notebook {
namespace {

TEST(RandomUid, IsThirtyTwoHexadecimalDigitsAndAlwaysAnother) {
  std::set<std::string> all;
  for (int i = 0; i < 1000; ++i) all.insert(random_uid());

  EXPECT_EQ(all.size(), 1000U);
  for (const std::string& uid : all) {
    EXPECT_EQ(uid.size(), 32U);
    EXPECT_EQ(uid.find_first_not_of("0123456789abcdef"), std::string::npos) << uid;
  }
}

// A large table needs one for each run.
TEST(RandomUid, IsMadeAtOnce) {
  const auto began = std::chrono::steady_clock::now();
  for (int i = 0; i < 20'000; ++i) (void)random_uid();

  EXPECT_LT(std::chrono::steady_clock::now() - began, std::chrono::seconds(1));
}

}  // namespace
}  // namespace keenfall::notebook
