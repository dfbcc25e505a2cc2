// Two groups of numbers compared the classical way: Welch's test, equivalence, and the power of a
// two-sample t test. The yardstick that the verdicts are held against, and the base of planning.
//
// Welch 1947 (Biometrika 34, 28-35); two one-sided tests: Schuirmann 1987 (J. Pharmacokinet.
// Biopharm. 15, 657-680); power by the noncentral t distribution (Cohen 1988).
#pragma once

#include <span>

namespace keenfall::numerics {

struct WelchTest {
  double difference = 0;  // mean of first minus mean of second
  double standard_error = 0;
  double degrees_of_freedom = 0;
  double t = 0;
  double p_two_sided = 0;
  double lo90 = 0;
  double hi90 = 0;
  double lo95 = 0;
  double hi95 = 0;
};

// Each group: at least two values, and not both without any spread.
[[nodiscard]] WelchTest welch_test(std::span<const double> first, std::span<const double> second);

struct EquivalenceTest {
  double t_lower = 0;
  double p_lower = 0;  // that the difference lies at or below -margin
  double t_upper = 0;
  double p_upper = 0;  // that it lies at or above +margin
  double p = 0;        // the larger: equivalent within the margin when small
};

// margin > 0, in the units of the values.
[[nodiscard]] EquivalenceTest equivalence_test(const WelchTest& welch, double margin);

struct TwoSampleDesign {
  double per_group = 2;     // at least 2, need not be whole
  double difference = 0;    // of the means
  double sd = 1;            // within each group, above 0
  double level = 0.05;      // two-sided
  bool both_tails = false;  // also count rejections in the wrong direction
};

[[nodiscard]] double power_of(const TwoSampleDesign& design);

// The (fractional) number per group, at least 1.1, at which the power is reached; design.per_group
// is ignored.
[[nodiscard]] double per_group_for(TwoSampleDesign design, double power);

}  // namespace keenfall::numerics
