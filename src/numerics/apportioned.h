// A number of things shared out by weights, as whole numbers.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace keenfall::numerics {

// As many shares as weights, adding up to `total`, each within one of its part. Weights not below
// 0, one above.
[[nodiscard]] std::vector<std::size_t> apportioned(std::span<const double> weights,
                                                   std::size_t total);

}  // namespace keenfall::numerics
