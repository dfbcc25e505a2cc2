#include "numerics/even_points.h"

#include <cmath>

namespace keenfall::numerics {

EvenPoints::EvenPoints(std::size_t dimension) : place_(dimension, 0.5) {
  for (std::size_t candidate = 2; steps_.size() < dimension; ++candidate) {
    bool is_prime = true;
    for (std::size_t d = 2; d * d <= candidate; ++d) is_prime = is_prime && candidate % d != 0;
    if (is_prime) steps_.push_back(std::fmod(std::sqrt(static_cast<double>(candidate)), 1.0));
  }
}

const std::vector<double>& EvenPoints::next() {
  for (std::size_t i = 0; i < place_.size(); ++i) {
    place_[i] += steps_[i];
    if (place_[i] >= 1) place_[i] -= 1;
  }
  return place_;
}

}  // namespace keenfall::numerics
