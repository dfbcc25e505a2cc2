// Numbers that a person gave, each with the range in which it can be worked with.
#pragma once

#include "base/result.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::sharpening {

struct Ranged {
  std::string what;  // "an edge length of"
  double found = 0;
  std::string unit;  // " mm"
  double lo = 0;     // both ends accepted
  double hi = 0;
  std::string accepted;  // "0.001 to 100,000 mm"
  std::string column;    // the field
};

// One problem for each that is out of its range.
[[nodiscard]] std::vector<base::Problem> problems_of(std::span<const Ranged> numbers);

}  // namespace keenfall::sharpening
