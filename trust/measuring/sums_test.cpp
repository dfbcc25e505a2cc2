#include "trust/measuring/sums.h"

#include <gtest/gtest.h>

namespace keenfall::trust {
namespace {

TEST(Sums, AreTheSameAfterBeingWrittenAndReadAgain) {
  const Sums sums{{"covers half", 47}, {"log width", 12.339298247318408}, {"wider", -0.1}};

  EXPECT_EQ(sums_in(in_one_line(sums)).value(), sums);
}

TEST(Sums, OfNothingAreAnEmptyLine) {
  EXPECT_EQ(in_one_line({}), "");
  EXPECT_TRUE(sums_in("").value().empty());
}

TEST(Sums, OfBatchesAreAddedNameByName) {
  Sums sums{{"trials", 50}};
  add(sums, "trials");
  add_all(sums, {{"trials", 49}, {"unusable", 1}});

  EXPECT_EQ(sum_of(sums, "trials"), 100);
  EXPECT_EQ(sum_of(sums, "unusable"), 1);
  EXPECT_EQ(sum_of(sums, "never counted"), 0);
}

TEST(Sums, RefuseAPartWithoutANumber) {
  for (const char* line : {"trials", "trials=", "trials=5x", "trials=50;wider"}) {
    EXPECT_FALSE(sums_in(line)) << line;
  }
  EXPECT_EQ(sums_in("trials=5x").error().sentence, "A sum is a name, \"=\" and a number.");
}

}  // namespace
}  // namespace keenfall::trust
