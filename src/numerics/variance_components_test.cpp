#include "numerics/variance_components.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace keenfall::numerics {
namespace {

using Groups = std::vector<std::vector<double>>;

// Travel time of ultrasound in six rails (nanoseconds above 36,100): Devore 2000, as the data set
// Rail of the R package nlme and Pinheiro & Bates 2000, section 1.1, which print 66.5, 24.80547,
// 4.020779 and -61.0885; the further digits by nlme 3.1-162.
const Groups kRails{
    {55, 53, 54}, {26, 37, 32}, {78, 91, 85}, {92, 100, 96}, {49, 51, 50}, {80, 85, 83}};

TEST(VarianceComponents, AgreeWithPinheiroAndBatesOnTheRails) {
  const VarianceComponents found = variance_components(kRails);

  EXPECT_NEAR(found.mean, 66.5, 1e-9);
  EXPECT_NEAR(found.mean_standard_error, 10.171037298, 1e-6);
  EXPECT_NEAR(found.sd_between, 24.8054653132, 1e-6);
  EXPECT_NEAR(found.sd_within, 4.0207793629, 1e-8);
  EXPECT_NEAR(found.log_likelihood, -61.0885004043, 1e-8);
  EXPECT_NEAR(found.share_between, 0.974398676727, 1e-8);
  EXPECT_NEAR(found.repeatability_limit, 11.1450317844, 1e-7);
}

// The same without the 2nd, 7th, 8th and 18th value: nlme 3.1-162, lme(y ~ 1, random = ~ 1 | g).
TEST(VarianceComponents, AgreeWithNlmeWhereGroupsAreOfUnequalSize) {
  const VarianceComponents found = variance_components(
      Groups{{55, 54}, {26, 37, 32}, {85}, {92, 100, 96}, {49, 51, 50}, {80, 85}});

  EXPECT_NEAR(found.mean, 66.5649525768, 1e-4);
  EXPECT_NEAR(found.mean_standard_error, 10.1780341918, 1e-4);
  EXPECT_NEAR(found.sd_between, 24.796124, 1e-3);
  EXPECT_NEAR(found.sd_within, 3.666753, 1e-4);
  EXPECT_NEAR(found.log_likelihood, -48.1581942006, 1e-8);
}

TEST(VarianceComponents, FindNoneBetweenGroupsWhoseMeansAreOne) {
  const VarianceComponents found = variance_components(Groups{{1, 3}, {1, 3}, {0, 4}});
  const VarianceComponents uneven = variance_components(Groups{{1, 3}, {1, 2, 3}, {0, 4}});

  EXPECT_DOUBLE_EQ(found.sd_between, 0);
  EXPECT_NEAR(found.sd_within, std::sqrt(12.0 / 5), 1e-12);  // all six values about one mean
  EXPECT_DOUBLE_EQ(uneven.sd_between, 0);
}

TEST(VarianceComponents, RefuseOneGroupAndGroupsWithoutScatter) {
  EXPECT_THROW((void)variance_components(Groups{{1, 2}}), std::logic_error);
  EXPECT_THROW((void)variance_components(Groups{{1, 1}, {2, 2}}), std::logic_error);
}

}  // namespace
}  // namespace keenfall::numerics
