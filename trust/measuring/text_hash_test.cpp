#include "trust/measuring/text_hash.h"

#include <gtest/gtest.h>

namespace keenfall::trust {
namespace {

// Its authors' test vectors, from memory; computed again in Python by the definition.
TEST(TextHash, IsThatOfThePublishedTestVectors) {
  EXPECT_EQ(text_hash(""), 0xcbf29ce484222325ULL);
  EXPECT_EQ(text_hash("a"), 0xaf63dc4c8601ec8cULL);
  EXPECT_EQ(text_hash("foobar"), 0x85944171f73967e8ULL);
}

TEST(TextHash, HasSixteenDigits) { EXPECT_EQ(text_hash_digits("a"), "af63dc4c8601ec8c"); }

}  // namespace
}  // namespace keenfall::trust
