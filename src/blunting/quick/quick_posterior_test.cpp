#include "blunting/quick/quick_posterior.h"

#include "blunting/quick/quick_fit.h"
#include "blunting/simulated_pair.h"
#include "numerics/summaries.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {
namespace {

BluntingData data_of_pair(std::uint64_t seed) {
  return *prepare(simulated({.ratio = 1.5, .runs_each = 6}, seed),
                  {.kind = "thread_push", .thread = ""},
                  default_model().errors);
}

Draws in_order(Draws draws) {
  std::ranges::sort(draws);
  return draws;
}

TEST(QuickPosterior, HasTheArmsOfTheQuickFit) {
  const BluntingData data = data_of_pair(12);

  const BluntingFit whole = quick_posterior(data, default_model());
  const QuickFit arms = quick_fit(data, default_model());

  ASSERT_EQ(whole.arms.size(), arms.arms.size());
  for (std::size_t a = 0; a < arms.arms.size(); ++a) {
    const Draws of_whole = in_order(whole.arms[a].log_half_keenness);
    const Draws of_arms = in_order(arms.arms[a].log_half_keenness);
    ASSERT_EQ(of_whole.size(), of_arms.size());
    for (std::size_t d = 0; d < of_arms.size(); ++d) EXPECT_NEAR(of_whole[d], of_arms[d], 1e-9);
  }
}

TEST(QuickPosterior, IsTheSameEachTime) {
  const BluntingData data = data_of_pair(13);

  const BluntingFit once = quick_posterior(data, default_model());
  const BluntingFit again = quick_posterior(data, default_model());

  EXPECT_EQ(once.runs[3].log_half_keenness, again.runs[3].log_half_keenness);
  EXPECT_EQ(once.run_scatter, again.run_scatter);
}

// Beside the sampled posterior of the same model: every run's own start and half keenness, within a
// quarter of their own sd and about as wide. A run far from its arm comes out up to a seventh
// narrower.
TEST(QuickPosterior, PutsEveryRunWhereTheFullPosteriorDoes) {
  const BluntingData data = data_of_pair(14);

  const BluntingFit quick = quick_posterior(data, default_model());
  const BluntingFit full = *fit_blunting(
      data, default_model(), {.draws = 4000}, {5}, base::one_thread(), base::unwatched());

  double all_widths = 0;
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    for (const auto member : {&RunDraws::log_start, &RunDraws::log_half_keenness}) {
      const numerics::Interval by_quick = numerics::interval_of(quick.runs[r].*member);
      const numerics::Interval by_full = numerics::interval_of(full.runs[r].*member);
      const double width = by_full.hi95 - by_full.lo95;
      EXPECT_NEAR(by_quick.median, by_full.median, width / 16) << r;
      EXPECT_NEAR((by_quick.hi95 - by_quick.lo95) / width, 1, 0.2) << r;
      all_widths += (by_quick.hi95 - by_quick.lo95) / width;
    }
  }
  EXPECT_NEAR(all_widths / static_cast<double>(2 * data.runs.size()), 1, 0.03);
}

// What is cut into batches to see by how much chance moves an answer.
TEST(QuickPosterior, HasEveryPartInEveryStretchOfItsDraws) {
  const BluntingFit fit = quick_posterior(data_of_pair(15), default_model());
  const Draws& draws = fit.run_scatter.front();
  const auto mean_from = [&](std::size_t first) {
    double total = 0;
    for (std::size_t d = first; d < first + 500; ++d) total += draws[d] / 500;
    return total;
  };

  for (std::size_t first = 0; first < draws.size(); first += 500) {
    EXPECT_NEAR(mean_from(first) / mean_from(0), 1, 0.02) << first;
  }
}

}  // namespace
}  // namespace keenfall::blunting
