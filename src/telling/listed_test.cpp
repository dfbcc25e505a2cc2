#include "telling/listed.h"

#include <gtest/gtest.h>

namespace keenfall::telling {
namespace {

TEST(Listed, NamesStandAsPeopleSayThem) {
  EXPECT_EQ(listed({}), "");
  EXPECT_EQ(listed({"A"}), "A");
  EXPECT_EQ(listed({"A", "B"}), "A and B");
  EXPECT_EQ(listed({"A", "B", "C"}), "A, B and C");
}

}  // namespace
}  // namespace keenfall::telling
