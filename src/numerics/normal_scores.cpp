#include "numerics/normal_scores.h"

#include "base/require.h"

#include <boost/math/special_functions/erf.hpp>
#include <boost/sort/pdqsort/pdqsort.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace keenfall::numerics {

namespace {

// Doubles are exact enough here; long doubles take twice as long.
using PlainDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

struct PlacedValue {
  double value = 0;
  std::size_t place = 0;
};

}  // namespace

Ordered in_order(std::span<const double> values) {
  std::vector<PlacedValue> placed(values.size());
  for (std::size_t i = 0; i < values.size(); ++i) placed[i] = {.value = values[i], .place = i};
  // Half the time of std::sort on draws, whose order no branch can foresee.
  boost::sort::pdqsort_branchless(
      placed.begin(), placed.end(), [](const PlacedValue& a, const PlacedValue& b) {
        return a.value < b.value;
      });
  Ordered sorted{.values = std::vector<double>(values.size()),
                 .places = std::vector<std::size_t>(values.size())};
  for (std::size_t i = 0; i < placed.size(); ++i) {
    sorted.values[i] = placed[i].value;
    sorted.places[i] = placed[i].place;
  }
  return sorted;
}

Ordered distances_from(double centre, const Ordered& sorted) {
  const std::vector<double>& values = sorted.values;
  Ordered distances;
  distances.values.reserve(values.size());
  distances.places.reserve(values.size());
  // From the centre outwards, on whichever side the next value is nearer.
  auto above = static_cast<std::size_t>(std::ranges::lower_bound(values, centre) - values.begin());
  std::size_t below = above;  // one past the next value on that side
  while (below > 0 || above < values.size()) {
    const bool above_is_next = below == 0 || (above < values.size() &&
                                              values[above] - centre < centre - values[below - 1]);
    const std::size_t next = above_is_next ? above++ : --below;
    distances.values.push_back(std::abs(values[next] - centre));
    distances.places.push_back(sorted.places[next]);
  }
  return distances;
}

NormalScores::NormalScores(std::size_t count) : of_ranks_(count) {
  base::require(count > 0, "normal scores need at least one value");
  for (std::size_t i = 0; i < count; ++i) of_ranks_[i] = at_rank(static_cast<double>(i + 1));
}

double NormalScores::at_rank(double rank) const {
  const double probability = (rank - 0.375) / (static_cast<double>(of_ranks_.size()) + 0.25);
  return std::numbers::sqrt2 * boost::math::erf_inv(2 * probability - 1, PlainDouble());
}

std::vector<double> NormalScores::of(const Ordered& sorted) const {
  const std::vector<double>& values = sorted.values;
  base::require(values.size() == of_ranks_.size(), "normal scores are for one count of values");
  std::vector<double> scores(values.size());
  for (std::size_t first = 0; first < values.size();) {
    std::size_t end = first + 1;
    while (end < values.size() && values[end] == values[first]) ++end;
    const double shared =
        end == first + 1 ? of_ranks_[first] : at_rank(0.5 * static_cast<double>(first + 1 + end));
    for (std::size_t i = first; i < end; ++i) scores[sorted.places[i]] = shared;
    first = end;
  }
  return scores;
}

}  // namespace keenfall::numerics
