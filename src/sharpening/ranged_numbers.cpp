#include "sharpening/ranged_numbers.h"

#include "base/plain_number.h"

namespace keenfall::sharpening {

std::vector<base::Problem> problems_of(std::span<const Ranged> numbers) {
  std::vector<base::Problem> problems;
  for (const Ranged& each : numbers) {
    if (each.found >= each.lo && each.found <= each.hi) continue;
    problems.push_back({.sentence = each.what + " " + base::plain_number(each.found) + each.unit +
                                    " cannot be worked with",
                        .place = {.column = each.column},
                        .accepted = each.accepted});
  }
  return problems;
}

}  // namespace keenfall::sharpening
