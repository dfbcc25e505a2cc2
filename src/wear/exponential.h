// exp for loops that the compiler turns into vector instructions: a polynomial after taking off
// powers of two. Relative error below 1e-14 where -700 < x < 700; beyond, exp of that bound.
#pragma once

#include <algorithm>
#include <bit>
#include <cstdint>

namespace keenfall::wear {

inline double vector_exp(double x) {
  constexpr double kLog2E = 1.4426950408889634;
  constexpr double kLn2High = 0x1.62e42fefa3800p-1;  // few enough bits that n times it is exact
  constexpr double kLn2Low = 0x1.ef35793c76730p-45;
  constexpr double kRound = 0x1.8p52;  // adding it leaves the nearest whole number in the low bits
  const double bounded = std::min(std::max(x, -700.0), 700.0);
  const double shifted = bounded * kLog2E + kRound;
  const double n = shifted - kRound;
  const double r = (bounded - n * kLn2High) - n * kLn2Low;
  // Taylor's series; |r| <= ln 2 / 2, so the first term left out is below 3e-15.
  double p = 1.0 / 39916800;
  p = p * r + 1.0 / 3628800;
  p = p * r + 1.0 / 362880;
  p = p * r + 1.0 / 40320;
  p = p * r + 1.0 / 5040;
  p = p * r + 1.0 / 720;
  p = p * r + 1.0 / 120;
  p = p * r + 1.0 / 24;
  p = p * r + 1.0 / 6;
  p = p * r + 0.5;
  p = p * r + 1.0;
  p = p * r + 1.0;
  const std::uint64_t exponent = (std::bit_cast<std::uint64_t>(shifted) + 1023) << 52;
  return p * std::bit_cast<double>(exponent);
}

}  // namespace keenfall::wear
