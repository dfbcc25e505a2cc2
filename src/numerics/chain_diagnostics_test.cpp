#include "numerics/chain_diagnostics.h"

#include "numerics/random.h"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

namespace keenfall::numerics {
namespace {

// Autoregressive chains with correlation rho; the limit of draws / ESS is (1 + rho) / (1 - rho).
std::vector<std::vector<double>> autoregressive(double rho, double shift_of_last, int length) {
  std::vector<std::vector<double>> chains;
  for (std::uint64_t c = 0; c < 4; ++c) {
    RandomStream random({5}, c);
    double state = random.normal();
    std::vector<double> chain;
    for (int i = 0; i < length; ++i) {
      state = rho * state + std::sqrt(1 - rho * rho) * random.normal();
      chain.push_back(state + (c == 3 ? shift_of_last : 0));
    }
    chains.push_back(chain);
  }
  return chains;
}

TEST(ChainDiagnostics, CountCorrelatedDrawsForWhatTheyAreWorth) {
  const ChainDiagnostics found = diagnose(autoregressive(0.6, 0, 5000));

  EXPECT_NEAR(found.ess_bulk, 20000 * 0.4 / 1.6, 700);
  EXPECT_LT(found.r_hat, 1.01);
}

TEST(ChainDiagnostics, SeeAChainThatStandsApart) {
  EXPECT_GT(diagnose(autoregressive(0.2, 1, 1000)).r_hat, 1.05);
}

std::vector<std::vector<double>> waves(int length, double slow, double shift_of_last) {
  std::vector<std::vector<double>> chains;
  for (int c = 1; c <= 4; ++c) {
    std::vector<double> chain;
    for (int i = 1; i <= length; ++i) {
      chain.push_back(std::sin(0.7 * i * c) + slow * std::sin(0.05 * i + c) +
                      0.1 * c * std::cos(static_cast<double>(i) * i * 0.013) +
                      (c == 4 ? shift_of_last : 0));
    }
    chains.push_back(chain);
  }
  return chains;
}

// R package posterior (tests/reference/chain_diagnostics.R).
TEST(ChainDiagnostics, AgreeWithTheReferencePackageInR) {
  const auto expect = [](const ChainDiagnostics& found, double r_hat, double bulk, double tail) {
    EXPECT_NEAR(found.r_hat, r_hat, 1e-9);
    EXPECT_NEAR(found.ess_bulk, bulk, 1e-6 * bulk);
    EXPECT_NEAR(found.ess_tail, tail, 1e-6 * tail);
  };
  expect(diagnose(waves(200, 0.3, 0)), 0.998517243870, 820.195279941828, 566.866402554428);
  expect(diagnose(waves(1000, 2, 0)), 0.999054236564, 144.763118084732, 1133.325214754241);
  expect(diagnose(waves(501, 1, 0.4)), 1.017138696105, 117.262321144251, 432.346675636329);
}

TEST(ChainDiagnostics, SayNothingIsUncertainAboutAConstant) {
  const std::vector<std::vector<double>> chains(4, std::vector<double>(100, 2.5));

  EXPECT_EQ(diagnose(chains), (ChainDiagnostics{.r_hat = 1, .ess_bulk = 400, .ess_tail = 400}));
}

TEST(ChainDiagnostics, RefuseChainsTooShortToSplit) {
  const std::vector<std::vector<double>> chains(4, std::vector<double>(3, 1.0));

  EXPECT_THROW((void)diagnose(chains), std::logic_error);
}

}  // namespace
}  // namespace keenfall::numerics
