// Evenly spread points of the unit cube, where random ones would lie in heaps: Richtmyer's
// sequence, fractions of multiples of square roots of primes (Niederreiter 1978, section 3).
// Without chance.
#pragma once

#include <cstddef>
#include <vector>

namespace keenfall::numerics {

class EvenPoints {
 public:
  explicit EvenPoints(std::size_t dimension);

  // The next point: `dimension` coordinates, from 0 to below 1. Valid until the next call.
  const std::vector<double>& next();

 private:
  std::vector<double> steps_;
  std::vector<double> place_;
};

}  // namespace keenfall::numerics
