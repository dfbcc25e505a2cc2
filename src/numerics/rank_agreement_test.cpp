#include "numerics/rank_agreement.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <stdexcept>

namespace keenfall::numerics {
namespace {

// Rank sums of 12 things by 3 judges: Zar 2010, Biostatistical Analysis (5th ed.), example 20.5, as
// reproduced at unistat.com/656. S = 1175.5; without correcting for ties W = 12 x 1175.5 / (9 x
// 1716) = 0.913364413364 and chi-square = 33 W = 30.141025641 (worked from the sums; the ranks
// themselves were not seen).
TEST(RankAgreement, AgreesWithZarsRankSums) {
  const double w = concordance_of(
      {.sums = {14.5, 21, 30.5, 6, 11, 3.5, 20, 11.5, 29, 28.5, 22.5, 36}, .judges = 3});

  EXPECT_NEAR(w, 0.913364413364, 1e-12);
  EXPECT_NEAR(3 * 11 * w, 30.141025641, 1e-9);
}

// Closed form: two judges of three things who agree wholly; 1 of 6 rankings does as well.
TEST(RankAgreement, OfTwoWhoAgreeWhollyIsOne) {
  const std::vector<std::vector<double>> scores{{1, 2, 3}, {10, 20, 30}};
  const RankAgreement found = rank_agreement(scores, {});

  EXPECT_TRUE(found.exact);
  EXPECT_DOUBLE_EQ(found.w, 1);
  EXPECT_DOUBLE_EQ(found.p, 1.0 / 6);
}

// With two judges W = (1 + Spearman's rho) / 2; rho of 1 2 3 4 5 with 2 1 4 3 5 is 0.8, and 8 of
// the 120 rankings have a rho of at least 0.8 (published tables of Spearman's rho give a one-sided
// p of 0.067 for n = 5).
TEST(RankAgreement, OfTwoIsSpearmansCorrelationMovedToZeroToOne) {
  const std::vector<std::vector<double>> scores{{1, 2, 3, 4, 5}, {2, 1, 4, 3, 5}};
  const RankAgreement found = rank_agreement(scores, {});

  EXPECT_NEAR(found.w, 0.9, 1e-12);
  EXPECT_NEAR(found.p, 8.0 / 120, 1e-12);
}

// By hand: judges 1.5 1.5 3 and 1 2.5 2.5 (ties), sums 2.5 4 5.5, S = 4.5, correction 6 + 6;
// W = 12 x 4.5 / (4 x 24 - 2 x 12) = 0.75. Of the second judge's three distinct rankings the one
// seen and 2.5 1 2.5 agree so well: p = 2/3.
TEST(RankAgreement, CorrectsForTies) {
  const std::vector<std::vector<double>> scores{{5, 5, 9}, {1, 4, 4}};
  const RankAgreement found = rank_agreement(scores, {});

  EXPECT_NEAR(found.w, 0.75, 1e-12);
  EXPECT_NEAR(found.p, 2.0 / 3, 1e-12);
}

TEST(RankAgreement, TakesRandomRankingsWhereThereAreTooMany) {
  const std::vector<std::vector<double>> scores{{1, 2, 3, 4, 5}, {2, 1, 4, 3, 5}};
  const RankAgreement found = rank_agreement(scores, {.most_counted = 10});

  EXPECT_FALSE(found.exact);
  EXPECT_NEAR(found.p, 8.0 / 120, 4 * found.monte_carlo_error);
}

TEST(RankAgreement, OfJudgesWhoTellNothingApartIsNone) {
  const std::vector<std::vector<double>> scores{{1, 1, 1}, {2, 2, 2}};

  EXPECT_DOUBLE_EQ(rank_agreement(scores, {}).w, 0);
  EXPECT_DOUBLE_EQ(rank_agreement(scores, {}).p, 1);
}

// Every ranking agrees as badly as the one seen, which counts among them (Phipson & Smyth 2010,
// Stat. Appl. Genet. Mol. Biol. 9, 39): p = (1 + n) / (1 + n).
TEST(RankAgreement, OfJudgesWhoTellNothingApartIsNoneByRandomRankingsToo) {
  const std::vector<std::vector<double>> scores{{1, 1, 1}, {2, 2, 2}};
  const RankAgreement found = rank_agreement(scores, {.most_counted = 1, .random_count = 20});

  EXPECT_FALSE(found.exact);
  EXPECT_DOUBLE_EQ(found.p, 1);
  EXPECT_DOUBLE_EQ(found.monte_carlo_error, 0);
}

TEST(RankAgreement, RefusesOneJudge) {
  const std::vector<std::vector<double>> scores{{1, 2, 3}};

  EXPECT_THROW((void)rank_agreement(scores, {}), std::logic_error);
}

}  // namespace
}  // namespace keenfall::numerics
