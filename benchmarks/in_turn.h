// Work of ours and of others measured in turn, round after round, so that whatever else the machine
// does falls on all of them alike; what counts is the median of the rounds.
#pragma once

#include "base/result.h"
#include "benchmarks/measured_child.h"

#include <functional>
#include <optional>
#include <vector>

namespace keenfall::benchmarks {

inline constexpr int kRounds = 5;

// What a contender does in a round, counted from 0. Absent: it is not there, and is asked no more.
using Contender = std::function<std::optional<base::Result<Measured>>(int round)>;

// One for each contender, in their order: a measurement of every round, or none at all. Fails where
// a contender does.
using Rounds = std::vector<std::vector<Measured>>;
[[nodiscard]] base::Result<Rounds> measured_in_turn(const std::vector<Contender>& contenders);

using NumberOf = std::function<double(const Measured&)>;

[[nodiscard]] double median_of(const std::vector<Measured>& rounds, const NumberOf& number);

// Of the number of each round divided by the other's in the same round.
[[nodiscard]] double median_ratio(const std::vector<Measured>& rounds,
                                  const std::vector<Measured>& to,
                                  const NumberOf& number);

}  // namespace keenfall::benchmarks
