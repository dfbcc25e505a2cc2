#include "benchmarks/in_turn.h"

#include "base/require.h"
#include "numerics/summaries.h"

#include <cstddef>

namespace keenfall::benchmarks {

base::Result<Rounds> measured_in_turn(const std::vector<Contender>& contenders) {
  Rounds rounds(contenders.size());
  for (int round = 0; round < kRounds; ++round) {
    for (std::size_t c = 0; c < contenders.size(); ++c) {
      if (round > 0 && rounds[c].empty()) continue;  // it is not there
      const auto measured = contenders[c](round);
      if (!measured) continue;
      if (!*measured) return base::failed(measured->error());
      rounds[c].push_back(**measured);
    }
  }
  return rounds;
}

double median_of(const std::vector<Measured>& rounds, const NumberOf& number) {
  std::vector<double> numbers;
  numbers.reserve(rounds.size());
  for (const Measured& measured : rounds) numbers.push_back(number(measured));
  return numerics::median_of(numbers);
}

double median_ratio(const std::vector<Measured>& rounds,
                    const std::vector<Measured>& to,
                    const NumberOf& number) {
  base::require(rounds.size() == to.size(), "both were measured in every round");
  std::vector<double> ratios;
  ratios.reserve(rounds.size());
  for (std::size_t i = 0; i < rounds.size(); ++i)
    ratios.push_back(number(rounds[i]) / number(to[i]));
  return numerics::median_of(ratios);
}

}  // namespace keenfall::benchmarks
