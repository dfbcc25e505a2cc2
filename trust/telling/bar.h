// What was measured, its Monte-Carlo error, and whether a bar that stood beforehand is met.
//
// A bar counts as missed when it is missed by more than 2.6 Monte-Carlo errors, which chance alone
// does in one case of two hundred.
#pragma once

#include <string>

namespace keenfall::trust {

struct Estimate {
  double value = 0;
  double error = 0;  // standard error, by the number of simulated trials
};

// Of a share of trials: binomial.
[[nodiscard]] Estimate share(double of_these, double all);

// Of exp of a mean of logs, from their sum, sum of squares and number (at least 2).
[[nodiscard]] Estimate mean_ratio(double sum_of_logs, double sum_of_squares, double count);

enum class Side { at_least, at_most };

struct Bar {
  Side side = Side::at_most;
  double limit = 0;
};

[[nodiscard]] bool is_missed(const Estimate& measured, const Bar& bar);

// "95.2 ± 0.3 %", "1.05 ± 0.01".
[[nodiscard]] std::string percent(const Estimate& measured);
[[nodiscard]] std::string ratio(const Estimate& measured);

// The same, with "**missed**" after it where it is.
[[nodiscard]] std::string percent_against(const Estimate& measured, const Bar& bar);

}  // namespace keenfall::trust
