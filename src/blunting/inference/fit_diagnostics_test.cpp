#include "blunting/inference/fit_diagnostics.h"

#include "numerics/random.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstddef>
#include <cstdint>

namespace keenfall::blunting {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

constexpr std::size_t kChains = 4;

// Four chains of a thousand independent normal draws each.
Draws well_mixed(std::uint64_t stream) {
  numerics::RandomStream random({3}, stream);
  Draws draws;
  for (std::size_t d = 0; d < kChains * 1000; ++d) draws.push_back(random.normal());
  return draws;
}

FitDiagnostics diagnosed(const Draws& draws, int divergences) {
  return diagnostics_of({.main = {&draws}}, kChains, divergences, base::one_thread());
}

// 0.1 % of 4,000 draws are 4.
TEST(FitDiagnostics, BearFewerDivergencesThanAThousandthOfTheDraws) {
  EXPECT_TRUE(diagnosed(well_mixed(1), 3).usable);
  const FitDiagnostics found = diagnosed(well_mixed(1), 4);

  EXPECT_FALSE(found.usable);
  EXPECT_THAT(found.reasons,
              ElementsAre("the sampler diverged 4 times in 4000 draws (wanted under 0.1 %)"));
}

TEST(FitDiagnostics, SayThatChainsDisagreeWhereOneStandsApart) {
  Draws draws = well_mixed(1);
  for (std::size_t d = 0; d < 1000; ++d) draws[d] += 3;

  const FitDiagnostics found = diagnosed(draws, 0);

  EXPECT_FALSE(found.usable);
  EXPECT_THAT(found.reasons.front(), HasSubstr("the chains disagree (R-hat "));
}

}  // namespace
}  // namespace keenfall::blunting
