// How well a log-logistic time agrees with the interval that is known to hold it.
//
// log T = location + scale x standard logistic. Known is that T lay after one time and not after
// another; either bound may be missing, and both may be the same (an exact time, whose density of
// log T is meant). Safe for intervals that are narrow or far out. Times above 0, scale above 0.
// Kalbfleisch & Prentice 2002 (from memory). Method page: docs/methods/edge-lives.md
#pragma once

#include <limits>

namespace keenfall::blunting {

// Natural logs of the times; one of them at least is finite, and after <= by.
struct LogTimeBounds {
  double after = -std::numeric_limits<double>::infinity();
  double by = std::numeric_limits<double>::infinity();

  bool operator==(const LogTimeBounds&) const = default;
};

struct TimeLikelihood {
  double log_likelihood = 0;
  double by_location = 0;  // its derivatives
  double by_log_scale = 0;
  double by_location_twice = 0;  // never above 0
};

[[nodiscard]] TimeLikelihood likelihood_of_bounds(const LogTimeBounds& bounds,
                                                  double location,
                                                  double scale);

}  // namespace keenfall::blunting
