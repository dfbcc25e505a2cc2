// How a trial is asked by the app: what is absent is as its claim and plan say, else the usual.
// Shape: docs/wire/api.json (Question).
#pragma once

#include "verdicts/judgement.h"

#include <cstdint>
#include <optional>
#include <string>

namespace keenfall::wire {

struct Question {
  std::optional<double> worth_it_margin;    // above 1
  std::optional<double> stop_level;         // times the start reading, above 1
  std::optional<std::string> stop_reading;  // "400gf"; not both
  std::optional<verdicts::ClaimAbout> claim;
  std::optional<std::string> kind;  // only readings of this kind
  bool with_struck = false;         // as if no reading were struck out
  std::optional<std::uint64_t> seed;

  bool operator==(const Question&) const = default;
};

}  // namespace keenfall::wire
