// How often the curve check names a place where the curve is right, and where it is not. The table
// of docs/methods/curve-check.md.
#include "blunting/inference/curve_check.h"
#include "blunting/inference/fitted_simulation.h"
#include "blunting/inference/off_the_curve.h"

#include <gtest/gtest.h>

#include <array>
#include <cstddef>
#include <cstdint>
#include <iostream>
#include <string>

namespace keenfall::blunting {
namespace {

int trials_named(const OffTheCurve& how, int trials, std::uint64_t first_seed) {
  int named = 0;
  for (int i = 0; i < trials; ++i) {
    const Fitted found = fitted(off_the_curve(how, first_seed + static_cast<std::uint64_t>(i)),
                                default_model(),
                                base::threads(2),
                                {.chains = 2, .warmup = 250, .draws = 500});
    named += check_curve(found.data, found.fit).misfits.empty() ? 0 : 1;
  }
  return named;
}

// At most 5 % is asked for; by its construction it is about 1 %. 100 trials of which 2 % are named
// show more than 6 with a chance of 0.4 % (binomial); 500, more than 18 with 1 %.
TEST(CurveCheckTable, SeldomNamesAPlaceWhereTheCurveIsRight) {
  constexpr int kTrials = 100;
  int all = 0;
  for (const int runs_each : {1, 3, 4, 6, 10}) {
    const int named = trials_named({.runs_each = runs_each}, kTrials, 1000);
    std::cout << "right, " << runs_each << " runs each: " << named << " of " << kTrials << "\n";
    EXPECT_LE(named, 6) << runs_each;
    all += named;
  }
  EXPECT_LE(all, 18);
}

TEST(CurveCheckTable, SeldomNamesAPlaceWhereErrorsAreNotTheModels) {
  constexpr int kTrials = 60;
  const int heavy = trials_named({.heavy_tails = true}, kTrials, 2000);
  const int unequal = trials_named({.noise_of_a = 2}, kTrials, 3000);

  std::cout << "heavy tails: " << heavy << ", one arm noisier: " << unequal << " of " << kTrials
            << "\n";
  EXPECT_LE(heavy, 4);
  EXPECT_LE(unequal, 4);
}

TEST(CurveCheckTable, NamesEdgesThatLeaveTheFamilyOfCurves) {
  struct Departure {
    std::string words;
    Leaves leaves;
    double times;
    std::array<int, 3> fewest_of_20;  // with 4, 6 and 10 runs each
  };
  constexpr int kTrials = 20;
  for (const Departure& departure :
       {Departure{"step of 1.2", Leaves::from_seven_cuts_on, 1.2, {4, 11, 18}},
        Departure{"step of 1.5", Leaves::from_seven_cuts_on, 1.5, {19, 19, 19}},
        Departure{"step of 2", Leaves::from_seven_cuts_on, 2, {19, 19, 19}},
        Departure{"step of 3", Leaves::from_seven_cuts_on, 3, {19, 19, 19}},
        Departure{"one checkpoint, 1.2", Leaves::at_fifteen_cuts, 1.2, {5, 18, 18}},
        Departure{"one checkpoint, 1.5", Leaves::at_fifteen_cuts, 1.5, {8, 18, 18}},
        Departure{"S up to 3.5", Leaves::in_an_s, 3.5, {19, 19, 19}},
        Departure{"keener at first, 0.9", Leaves::keener_at_first, 0.9, {7, 12, 18}},
        Departure{"keener at first, 0.8", Leaves::keener_at_first, 0.8, {19, 19, 19}}}) {
    constexpr std::array kRunsEach{4, 6, 10};
    for (std::size_t i = 0; i < kRunsEach.size(); ++i) {
      const int runs_each = kRunsEach[i];
      const OffTheCurve how{
          .leaves = departure.leaves, .times = departure.times, .runs_each = runs_each};
      const int named = trials_named(how, kTrials, 4000);
      std::cout << departure.words << ", " << runs_each << " runs each: " << named << " of "
                << kTrials << "\n";
      EXPECT_GE(named, departure.fewest_of_20[i]) << departure.words << ", " << runs_each;
    }
  }
}

}  // namespace
}  // namespace keenfall::blunting
