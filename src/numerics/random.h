// A repeatable stream of random numbers. The same seed and stream number give the same numbers on
// every machine and with any number of threads: each chain or simulated run has a stream of its
// own. Generator: 64-bit Mersenne twister (std), seeded by SplitMix64 from (seed, stream); normals
// by the ziggurat method of Boost.Random.
#pragma once

#include "base/seed.h"

#include <cstdint>
#include <random>

namespace keenfall::numerics {

class RandomStream {
 public:
  RandomStream(base::Seed seed, std::uint64_t stream);

  [[nodiscard]] double uniform();      // in (0, 1)
  [[nodiscard]] double normal();       // mean 0, sd 1
  [[nodiscard]] double exponential();  // mean 1
  [[nodiscard]] double student_t(double degrees_of_freedom);
  [[nodiscard]] std::uint64_t below(std::uint64_t bound);  // 0 .. bound-1; bound > 0

 private:
  std::mt19937_64 generator_;
};

}  // namespace keenfall::numerics
