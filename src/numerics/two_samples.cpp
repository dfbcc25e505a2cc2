#include "numerics/two_samples.h"

#include "base/require.h"
#include "numerics/summaries.h"

#include <boost/math/distributions/non_central_t.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <boost/math/tools/roots.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace keenfall::numerics {

namespace bm = boost::math;

WelchTest welch_test(std::span<const double> first, std::span<const double> second) {
  base::require(first.size() >= 2 && second.size() >= 2, "each group needs at least two values");
  const double a = variance_of(first) / static_cast<double>(first.size());
  const double b = variance_of(second) / static_cast<double>(second.size());
  base::require(a + b > 0, "two groups without any spread cannot be compared by Welch's test");
  WelchTest test;
  test.difference = mean_of(first) - mean_of(second);
  test.standard_error = std::sqrt(a + b);
  test.degrees_of_freedom = (a + b) * (a + b) /
                            (a * a / static_cast<double>(first.size() - 1) +
                             b * b / static_cast<double>(second.size() - 1));
  test.t = test.difference / test.standard_error;
  const bm::students_t distribution(test.degrees_of_freedom);
  test.p_two_sided = 2 * bm::cdf(bm::complement(distribution, std::abs(test.t)));
  const double half90 = test.standard_error * bm::quantile(distribution, 0.95);
  const double half95 = test.standard_error * bm::quantile(distribution, 0.975);
  test.lo90 = test.difference - half90;
  test.hi90 = test.difference + half90;
  test.lo95 = test.difference - half95;
  test.hi95 = test.difference + half95;
  return test;
}

EquivalenceTest equivalence_test(const WelchTest& welch, double margin) {
  base::require(margin > 0, "an equivalence margin must be above zero");
  const bm::students_t distribution(welch.degrees_of_freedom);
  EquivalenceTest test;
  test.t_lower = (welch.difference + margin) / welch.standard_error;
  test.t_upper = (welch.difference - margin) / welch.standard_error;
  test.p_lower = bm::cdf(bm::complement(distribution, test.t_lower));
  test.p_upper = bm::cdf(distribution, test.t_upper);
  test.p = std::max(test.p_lower, test.p_upper);
  return test;
}

double power_of(const TwoSampleDesign& design) {
  base::require(design.per_group > 1 && design.sd > 0, "a design needs groups and a spread");
  const double freedom = 2 * (design.per_group - 1);
  const double offset = std::abs(design.difference) / design.sd * std::sqrt(design.per_group / 2);
  const double critical = bm::quantile(bm::students_t(freedom), 1 - design.level / 2);
  const bm::non_central_t shifted(freedom, offset);
  double power = bm::cdf(bm::complement(shifted, critical));
  if (design.both_tails) power += bm::cdf(shifted, -critical);
  return power;
}

double per_group_for(TwoSampleDesign design, double power) {
  base::require(power > 0 && power < 1, "a power lies between 0 and 1");
  base::require(design.difference != 0, "no number of runs shows a difference of zero");
  const auto shortfall = [&design, power](double per_group) {
    design.per_group = per_group;
    return power_of(design) - power;
  };
  constexpr double kSmallest = 1.1;  // below it the t distribution has hardly any freedom left
  if (shortfall(kSmallest) >= 0) return kSmallest;
  double high = 4;
  while (shortfall(high) < 0) high *= 2;
  std::uintmax_t iterations = 200;
  const auto bracket = bm::tools::toms748_solve(
      shortfall, kSmallest, high, bm::tools::eps_tolerance<double>(45), iterations);
  return 0.5 * (bracket.first + bracket.second);
}

}  // namespace keenfall::numerics
