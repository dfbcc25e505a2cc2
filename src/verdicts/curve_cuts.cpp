#include "verdicts/curve_cuts.h"

#include "base/require.h"

#include <algorithm>
#include <cmath>

namespace keenfall::verdicts {

namespace {

constexpr int kSpread = 24;
constexpr double kOneCount = 1 + 1e-9;   // the same count, but for rounding
constexpr double kHardlyFurther = 1.05;  // too near a last cut for a row of its own: our choice

// The last cuts and the ends of the curves, rising, each once.
std::vector<double> ends_of(std::span<const double> longest_run_cuts) {
  std::vector<double> ends;
  for (const double longest : longest_run_cuts) {
    ends.push_back(longest);
    ends.push_back(longest * kCurveBeyond);
  }
  std::ranges::sort(ends);
  const auto again =
      std::unique(ends.begin(), ends.end(), [](double a, double b) { return b <= a * kOneCount; });
  ends.erase(again, ends.end());
  return ends;
}

std::vector<double> cuts_of_medium(double first_cuts, std::span<const double> longest_run_cuts) {
  const std::vector<double> ends = ends_of(longest_run_cuts);
  std::vector<double> cuts{0};
  const double ratio = ends.back() / first_cuts;
  for (int i = 0; i < kSpread; ++i) {
    const double here = first_cuts * std::pow(ratio, static_cast<double>(i) / (kSpread - 1));
    const bool near_an_end = std::ranges::any_of(ends, [here](double end) {
      return here < end * kHardlyFurther && end < here * kHardlyFurther;
    });
    if (!near_an_end) cuts.push_back(here);
  }
  cuts.insert(cuts.end(), ends.begin(), ends.end());
  std::ranges::sort(cuts);
  return cuts;
}

}  // namespace

std::vector<std::vector<double>> curve_cuts(double first_cuts,
                                            std::span<const double> longest_run_cuts) {
  base::require(first_cuts > 0, "a medium has a checkpoint after the start");
  if (longest_run_cuts.empty()) return {};
  const std::vector<double> all = cuts_of_medium(first_cuts, longest_run_cuts);
  std::vector<std::vector<double>> of_arms;
  for (const double longest : longest_run_cuts) {
    const double end = longest * kCurveBeyond * kOneCount;
    of_arms.emplace_back(all.begin(), std::ranges::upper_bound(all, end));
  }
  return of_arms;
}

}  // namespace keenfall::verdicts
