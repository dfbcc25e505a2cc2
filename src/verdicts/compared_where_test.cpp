#include "verdicts/compared_where.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::verdicts {
namespace {

TEST(ComparedWhere, AReadingAskedForStaysAsTypedUnlessItWasConverted) {
  EXPECT_EQ(asked_reading_text(400), "400");
  EXPECT_EQ(asked_reading_text(0.3), "0.3");
  EXPECT_EQ(asked_reading_text(509.8581064889641), "509.9");
  EXPECT_EQ(asked_reading_text(std::exp(std::log(0.01))), "0.01");
}

}  // namespace
}  // namespace keenfall::verdicts
