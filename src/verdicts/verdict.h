// The three-way verdict on a ratio of lasting, and the words for it.
//
// A ratio is how many times as long arm a stays keen as arm b, in one medium by one method. The
// worth-it margin M > 1 is the ratio below which nobody would act. Rules
// (docs/methods/verdicts.md):
//   longer, and worth having        95 % interval above 1 and above M
//   longer                          95 % interval above 1; size against M not settled
//   longer but too little to matter 95 % interval above 1, 90 % interval inside 1/M..M
//   practically the same            90 % interval inside 1/M..M
//   not settled                     none of these
// and the mirror image of each "longer". The 90 % rule is two one-sided 5 % tests (Schuirmann
// 1987).
#pragma once

#include "numerics/interval.h"

#include <string_view>

namespace keenfall::verdicts {

enum class Verdict {
  longer_and_worth_having,
  longer,
  longer_but_too_little_to_matter,
  practically_the_same,
  shorter_but_too_little_to_matter,
  shorter,
  shorter_by_enough_to_matter,
  not_settled
};

// Bounds of a ratio, all above zero.
struct RatioBounds {
  double lo90 = 0;
  double hi90 = 0;
  double lo95 = 0;
  double hi95 = 0;

  bool operator==(const RatioBounds&) const = default;
};

[[nodiscard]] RatioBounds bounds_of(const numerics::Interval& ratio);

// worth_it_margin > 1.
[[nodiscard]] Verdict verdict_on(const RatioBounds& ratio, double worth_it_margin);

// "longer, and worth having": also the value in JSON.
[[nodiscard]] std::string_view in_words(Verdict verdict);

[[nodiscard]] bool is_settled(Verdict verdict);

}  // namespace keenfall::verdicts
