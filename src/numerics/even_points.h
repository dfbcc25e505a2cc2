// Evenly spread points of the unit cube, where random ones would lie in heaps: Sobol's sequence
// with the direction numbers of Joe & Kuo 2008, by Boost.Random. Without chance.
#pragma once

#include "numerics/random.h"

#include <cstddef>
#include <memory>
#include <span>
#include <vector>

namespace keenfall::numerics {

class EvenPoints {
 public:
  // Beyond the sequence's 3,667 dimensions coordinates are pseudo-random, the same ones each time.
  explicit EvenPoints(std::size_t dimension);
  ~EvenPoints();
  EvenPoints(const EvenPoints&) = delete;
  EvenPoints& operator=(const EvenPoints&) = delete;
  EvenPoints(EvenPoints&&) = delete;
  EvenPoints& operator=(EvenPoints&&) = delete;

  // The next point: `dimension` coordinates, above 0 and below 1. Valid until the next call.
  const std::vector<double>& next();

 private:
  class Sequence;

  std::unique_ptr<Sequence> sequence_;
  RandomStream beyond_;
  std::vector<double> place_;
};

// Standard normals from coordinates, by pairs (Box & Muller 1958). As many normals as coordinates,
// or one fewer; an even number of coordinates, each below 1.
void as_normals(std::span<const double> coordinates, std::span<double> normals);

}  // namespace keenfall::numerics
