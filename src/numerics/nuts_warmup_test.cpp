#include "numerics/nuts_warmup.h"

#include <gtest/gtest.h>

#include <vector>

namespace keenfall::numerics {
namespace {

// 75 iterations for a start, windows of 25, 50 and 100, and one that is stretched to the last 50,
// which are for the step size alone.
TEST(WindowsOfAWarmUp, DoubleUpToTheEndThatIsForTheStepSizeAlone) {
  EXPECT_EQ(metric_updates(1000), (std::vector<int>{99, 149, 249, 949}));
  EXPECT_EQ(first_metric_iteration(1000), 75);
}

TEST(WindowsOfAWarmUp, LeaveATenthForTheStepSizeWhereThereIsLittle) {
  EXPECT_EQ(metric_updates(100), (std::vector<int>{24, 89}));
  EXPECT_EQ(first_metric_iteration(100), 15);
}

}  // namespace
}  // namespace keenfall::numerics
