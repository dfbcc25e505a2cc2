#include "trust/telling/bar.h"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

namespace keenfall::trust {
namespace {

TEST(Bar, OfAShareHasTheBinomialError) {
  const Estimate found = share(3800, 4000);

  EXPECT_DOUBLE_EQ(found.value, 0.95);
  EXPECT_NEAR(found.error, 0.003446, 1e-6);  // sqrt(0.95 x 0.05 / 4000)
}

TEST(Bar, OfARatioIsTheGeometricMean) {
  const double low = std::log(1.0);
  const double high = std::log(1.21);

  const Estimate found = mean_ratio(low + high, low * low + high * high, 2);

  EXPECT_NEAR(found.value, 1.1, 1e-12);
  EXPECT_NEAR(found.error, 1.1 * std::log(1.21) / 2, 1e-12);
}

TEST(Bar, CountsAsMissedBeyondTwoPointSixErrorsOnly) {
  const Bar at_least{.side = Side::at_least, .limit = 0.93};
  const Bar at_most{.side = Side::at_most, .limit = 0.05};

  EXPECT_FALSE(is_missed({.value = 0.905, .error = 0.01}, at_least));
  EXPECT_TRUE(is_missed({.value = 0.903, .error = 0.01}, at_least));
  EXPECT_FALSE(is_missed({.value = 0.99, .error = 0.001}, at_least));
  EXPECT_FALSE(is_missed({.value = 0.075, .error = 0.01}, at_most));
  EXPECT_TRUE(is_missed({.value = 0.077, .error = 0.01}, at_most));
  EXPECT_FALSE(is_missed({.value = 0, .error = 0}, at_most));
}

TEST(Bar, SaysThatItIsMissed) {
  const Bar bar{.side = Side::at_most, .limit = 0.05};

  EXPECT_EQ(percent_against({.value = 0.0512, .error = 0.0034}, bar), "5.1 ± 0.3 %");
  EXPECT_EQ(percent_against({.value = 0.0912, .error = 0.0034}, bar), "9.1 ± 0.3 % **missed**");
  EXPECT_EQ(ratio({.value = 1.0466, .error = 0.007}), "1.047 ± 0.007");
}

TEST(Bar, HasNoShareOfNoTrials) { EXPECT_THROW((void)share(0, 0), std::logic_error); }

}  // namespace
}  // namespace keenfall::trust
