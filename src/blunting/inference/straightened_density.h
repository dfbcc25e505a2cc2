// The posterior in coordinates where it is about round, so that the sampler takes long strides.
//
//   q = mode + U^-1 z,   U^T U the expected curvature at the mode (of all but the scales)
//
// A linear map leaves the posterior what it is; only the sampler's path changes. The mode is found
// by Newton steps on the expected curvature with step halving, the scales held at what the
// least-squares curves suggest. Cholesky factors are sparse (Davis 2006, Direct Methods for Sparse
// Linear Systems).
#pragma once

#include "base/seed.h"
#include "blunting/inference/blunting_density.h"

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace keenfall::blunting {

class StraightenedDensity {
 public:
  // start: a point of the density's own space at finite density.
  StraightenedDensity(const BluntingDensity& density, std::vector<double> start);
  ~StraightenedDensity();
  StraightenedDensity(const StraightenedDensity&);
  StraightenedDensity(StraightenedDensity&&) noexcept;
  StraightenedDensity& operator=(const StraightenedDensity&) = delete;
  StraightenedDensity& operator=(StraightenedDensity&&) = delete;

  [[nodiscard]] double operator()(std::span<const double> z, std::span<double> gradient);

  // From the sampler's coordinates to the density's own.
  [[nodiscard]] std::vector<double> unstraightened(std::span<const double> z) const;

  // A start for a chain, about as far from the mode as the posterior is wide.
  [[nodiscard]] std::vector<double> start_for(base::Seed seed, std::uint64_t chain) const;

 private:
  struct Map;
  BluntingDensity density_;
  std::shared_ptr<const Map> map_;
};

}  // namespace keenfall::blunting
