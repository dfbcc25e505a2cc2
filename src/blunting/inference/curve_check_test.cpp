#include "blunting/inference/curve_check.h"

#include "blunting/curves/log_logistic.h"
#include "blunting/inference/fitted_simulation.h"
#include "blunting/inference/off_the_curve.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace keenfall::blunting {
namespace {

CurveCheckResult checked(const trials::Trial& trial, const ModelSpec& spec = default_model()) {
  const Fitted found = fitted(trial, spec, base::threads(2));
  return check_curve(found.data, found.fit);
}

bool names(const CurveCheckResult& check, std::size_t arm, double cuts) {
  return std::ranges::any_of(check.misfits, [&](const CurveMisfit& misfit) {
    return misfit.arm == arm && misfit.cuts == cuts;
  });
}

constexpr LogLogistic kCurve{.log_start = 0, .log_half_keenness = 3, .shape = 1};

// Runs of one arm, by their residuals at 1, 2, 3, ... cuts, and a fit that knows their curve but
// for draws of each run's log start; readings have a scatter of 0.1.
Fitted with_residuals(const std::vector<std::vector<double>>& residuals,
                      const std::vector<Draws>& log_starts) {
  Fitted made{.data = {.arms = {{.blade = "A"}}, .runs = {}}, .fit = {.runs = {}}};
  const std::size_t draws = log_starts.front().size();
  made.fit.arms = {{.shape = Draws(draws, kCurve.shape)}};
  made.fit.reading_scatter = Draws(draws, 0.1);
  made.fit.checkpoint_scatter = Draws(draws, 0.0);
  for (std::size_t r = 0; r < residuals.size(); ++r) {
    RunData run{.run = r};
    for (std::size_t k = 0; k < residuals[r].size(); ++k) {
      const double cuts = static_cast<double>(k + 1);
      run.checkpoints.push_back(
          {.cuts = cuts,
           .log_cuts = std::log(cuts),
           .log_bluntness = log_bluntness(kCurve, std::log(cuts)) + residuals[r][k]});
    }
    made.data.runs.push_back(run);
    made.fit.runs.push_back(
        {.log_start = log_starts[r], .log_half_keenness = Draws(draws, kCurve.log_half_keenness)});
  }
  return made;
}

// One reading 0.2 off, of scatter 0.1; the start there is known to 0.06, so the residual scatters
// by 0.1 sqrt(1 - 0.36) = 0.08: z = 2.5, which 1.242 % of normal deviates exceed either way (table
// of the normal distribution).
TEST(CurveCheck, HoldsAResidualAgainstWhatItScattersSinceItPlacedTheCurve) {
  const Fitted made = with_residuals({{0.2}}, {{-0.06, 0.06}});

  EXPECT_NEAR(check_curve(made.data, made.fit).smallest_p, 0.01242, 5e-6);
}

// Four runs at four places, each 0.1 above or below their mean: a pooled sd of sqrt(0.16 / 12) with
// 12 degrees of freedom. A mean of 4.318 times sd / sqrt(4) has p = 0.001 (table of Student's t);
// four places make it 0.004. The fit's own scatter of 0.1 does not enter.
TEST(CurveCheck, HoldsRunsAgainstHowTheyDifferFromEachOther) {
  const double off = 4.318 * std::sqrt(0.16 / 12) / 2;
  const Fitted made = with_residuals({{0.1, 0.1, 0.1, off + 0.1},
                                      {-0.1, 0.1, -0.1, off - 0.1},
                                      {0.1, -0.1, -0.1, off + 0.1},
                                      {-0.1, -0.1, 0.1, off - 0.1}},
                                     std::vector<Draws>(4, {0, 0}));
  const CurveCheckResult check = check_curve(made.data, made.fit);

  EXPECT_NEAR(check.smallest_p, 0.004, 4e-6);
  ASSERT_EQ(check.misfits.size(), 1);
  EXPECT_EQ(check.misfits[0].cuts, 4);
  EXPECT_NEAR(check.misfits[0].log_offset, off, 1e-12);
}

// Where the start is known no better than the reading, the reading is all that is known of it.
TEST(CurveCheck, LeavesOutAPlaceThatItsReadingsAlonePlaced) {
  const Fitted made = with_residuals({{0.3}}, {{-0.099, 0.099}});

  EXPECT_EQ(check_curve(made.data, made.fit).smallest_p, 1);
}

TEST(CurveCheck, PassesReadingsThatFollowTheCurve) {
  for (const int runs_each : {1, 2, 3, 6}) {
    const CurveCheckResult check = checked(off_the_curve({.runs_each = runs_each}, 7));

    EXPECT_TRUE(check.misfits.empty()) << runs_each;
    EXPECT_LE(check.smallest_p, 1);
  }
}

TEST(CurveCheck, NamesTheOneCheckpointWhereReadingsLeaveTheCurve) {
  const OffTheCurve how{.leaves = Leaves::at_fifteen_cuts, .times = 1.6};
  const CurveCheckResult check = checked(off_the_curve(how, 8));

  ASSERT_TRUE(names(check, 0, 15));
  const auto at_fifteen = std::ranges::find_if(
      check.misfits, [](const CurveMisfit& misfit) { return misfit.cuts == 15; });
  EXPECT_GT(at_fifteen->log_offset, 0);
}

TEST(CurveCheck, NamesAStepWithFourRunsEach) {
  const OffTheCurve how{.leaves = Leaves::from_seven_cuts_on, .times = 3, .runs_each = 4};

  EXPECT_FALSE(checked(off_the_curve(how, 9)).misfits.empty());
}

// Whether readings weigh as robust or as Gaussian.
TEST(CurveCheck, NamesAStepByThePlainModelToo) {
  const OffTheCurve how{.leaves = Leaves::from_seven_cuts_on, .times = 2};

  EXPECT_FALSE(checked(off_the_curve(how, 10), plain_model()).misfits.empty());
  EXPECT_TRUE(checked(off_the_curve({}, 10), plain_model()).misfits.empty());
}

TEST(CurveCheck, IsNotMisledBySlipsOfThePen) {
  EXPECT_TRUE(checked(simulated({.runs_each = 6, .slip_every = 40}, 3)).misfits.empty());
}

}  // namespace
}  // namespace keenfall::blunting
