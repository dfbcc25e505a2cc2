#include "server/key.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>
#include <string>

namespace keenfall::server {
namespace {

TEST(AKey, IsTwentyTwoCharactersThatAnAddressTakesAsTheyAre) {
  EXPECT_THAT(random_key(), ::testing::MatchesRegex("[A-Za-z0-9_-]+"));
  EXPECT_EQ(random_key().size(), 22U);
}

TEST(AKey, IsAnotherOneEachTime) {
  std::set<std::string> keys;
  for (int i = 0; i < 1000; ++i) keys.insert(random_key());

  EXPECT_EQ(keys.size(), 1000U);
}

// 128 bits in 22 characters of 6: the last holds 2 bits and four zeros.
TEST(AKey, EndsInOneOfTheFourCharactersThatTwoBitsMake) {
  std::set<char> last;
  for (int i = 0; i < 200; ++i) last.insert(random_key().back());

  EXPECT_THAT(last, ::testing::ElementsAre('A', 'Q', 'g', 'w'));
}

TEST(AKey, IsItselfAndNothingElse) {
  EXPECT_TRUE(is_key("abc", "abc"));
  EXPECT_FALSE(is_key("abd", "abc"));
  EXPECT_FALSE(is_key("ab", "abc"));
  EXPECT_FALSE(is_key("abcd", "abc"));
  EXPECT_FALSE(is_key("", "abc"));
}

}  // namespace
}  // namespace keenfall::server
