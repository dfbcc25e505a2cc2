#include "trust/telling/ranks_table.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

namespace keenfall::trust {
namespace {

Sums ranks(const std::string& parameter, const std::vector<double>& bins) {
  Sums sums;
  for (std::size_t i = 0; i < bins.size(); ++i)
    sums[fmt::format("{}#{:02}", parameter, i)] = bins[i];
  return sums;
}

// R 4.2.2: chisq.test(c(60, 40, rep(50, 18))) has X-squared = 4, p-value = 0.9999; by hand, 100 /
// 50 twice. And chisq.test(c(90, 10, rep(50, 18))): X-squared = 64, p-value = 8.868e-07.
TEST(RanksTable, TestsUniformityByChiSquared) {
  std::vector<double> bins(20, 50);
  bins[0] = 60;
  bins[1] = 40;
  const auto mild = ranked_parameters(ranks("half", bins)).front();
  bins[0] = 90;
  bins[1] = 10;
  const auto strong = ranked_parameters(ranks("half", bins)).front();

  EXPECT_DOUBLE_EQ(mild.chi_squared, 4);
  EXPECT_TRUE(mild.uniform);
  EXPECT_DOUBLE_EQ(strong.chi_squared, 64);
  EXPECT_NEAR(mild.p, 0.9999, 0.0001);
  EXPECT_NEAR(strong.p, 8.868e-07, 1e-10);
  EXPECT_FALSE(strong.uniform);
}

// The 99 % point of chi-squared with 19 degrees of freedom is 36.19 (any printed table).
TEST(RanksTable, KnowsThePointOfOnePercent) {
  std::vector<double> bins(20, 50);
  bins[0] += 30.08;  // 2 x 30.08^2 / 50 = 36.19
  bins[1] -= 30.08;

  const auto found = ranked_parameters(ranks("half", bins)).front();

  EXPECT_NEAR(found.p, 0.01, 0.0001);
}

TEST(RanksTable, AllowsForManyParameters) {
  std::vector<double> bins(20, 50);
  bins[0] += 31;  // p = 0.0052 by itself (R's pchisq)
  bins[1] -= 31;
  const Sums alone = ranks("half", bins);
  Sums among = alone;
  for (const char* other : {"start", "shape"})
    add_all(among, ranks(other, std::vector<double>(20, 50)));

  EXPECT_FALSE(ranked_parameters(alone).front().uniform);
  EXPECT_TRUE(ranked_parameters(among).front().uniform);
}

TEST(RanksTable, SaysTheLeastUniformOfADesign) {
  Sums sums = ranks("ratio of half keenness", std::vector<double>(20, 50));
  std::vector<double> bins(20, 50);
  bins[0] = 90;
  bins[1] = 10;
  add_all(sums, ranks("shape", bins));
  add_all(sums, {{"trials", 1000}, {"unusable", 7}});

  const std::string summary =
      ranks_summary(std::vector{RanksResult{.design = "plain", .engine = "full", .sums = sums}});

  EXPECT_NE(
      summary.find("| plain | full | 1000 (7) | 2 | 0.00000089, shape | 1.0 | 1 **missed** |"),
      std::string::npos)
      << summary;
}

TEST(RanksTable, CountsABinThatWasNeverHitAsEmpty) {
  Sums sums = ranks("half", std::vector<double>(20, 50));
  sums.erase("half#07");

  EXPECT_EQ(ranked_parameters(sums).front().bins[7], 0);
}

}  // namespace
}  // namespace keenfall::trust
