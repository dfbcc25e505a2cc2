#include "numerics/even_points.h"

#include <boost/random/sobol.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace keenfall::numerics {

namespace {

constexpr std::size_t kDimensionsOfSequence = 3667;

}  // namespace

class EvenPoints::Sequence {
 public:
  explicit Sequence(std::size_t dimension) : engine_(dimension) {}

  double next() { return (static_cast<double>(engine_()) + 0.5) * 0x1p-32; }

 private:
  boost::random::sobol_engine<std::uint32_t, 32> engine_;
};

EvenPoints::EvenPoints(std::size_t dimension)
    : sequence_(
          std::make_unique<Sequence>(std::clamp<std::size_t>(dimension, 1, kDimensionsOfSequence))),
      beyond_({1}, 0),
      place_(dimension) {}

EvenPoints::~EvenPoints() = default;

const std::vector<double>& EvenPoints::next() {
  for (std::size_t i = 0; i < place_.size(); ++i) {
    place_[i] = i < kDimensionsOfSequence ? sequence_->next() : beyond_.uniform();
  }
  return place_;
}

void as_normals(std::span<const double> coordinates, std::span<double> normals) {
  for (std::size_t i = 0; i < normals.size(); i += 2) {
    const double radius = std::sqrt(-2 * std::log(1 - coordinates[i]));
    const double angle = 2 * std::numbers::pi * coordinates[i + 1];
    normals[i] = radius * std::cos(angle);
    if (i + 1 < normals.size()) normals[i + 1] = radius * std::sin(angle);
  }
}

}  // namespace keenfall::numerics
