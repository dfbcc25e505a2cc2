// Ranks turned into normal scores: where a value would stand, had its rank come from a standard
// normal. Rank r of S becomes z = Phi^-1((r - 3/8) / (S + 1/4)); ties share their mean rank.
//
// A score depends on the rank and the count only, so the scores of a count are worked out once and
// serve every quantity with that many draws. Equation 14 of Vehtari, Gelman, Simpson, Carpenter &
// Bürkner 2021, Bayesian Analysis 16(2), 667-718.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace keenfall::numerics {

struct Ordered {
  std::vector<double> values;       // ascending
  std::vector<std::size_t> places;  // where each value stood before it was put in order
};

[[nodiscard]] Ordered in_order(std::span<const double> values);

// The distances of all values from `centre`, ascending, with the places of the values.
[[nodiscard]] Ordered distances_from(double centre, const Ordered& sorted);

class NormalScores {
 public:
  // At least one value.
  explicit NormalScores(std::size_t count);

  // As many values as `count`, and their places are 0 to count - 1. The score of each place.
  [[nodiscard]] std::vector<double> of(const Ordered& sorted) const;

 private:
  [[nodiscard]] double at_rank(double rank) const;

  std::vector<double> of_ranks_;  // ranks from 1
};

}  // namespace keenfall::numerics
