#include "verdicts/verdict.h"

#include "base/require.h"

namespace keenfall::verdicts {

RatioBounds bounds_of(const numerics::Interval& ratio) {
  return {.lo90 = ratio.lo90, .hi90 = ratio.hi90, .lo95 = ratio.lo95, .hi95 = ratio.hi95};
}

Verdict verdict_on(const RatioBounds& ratio, double worth_it_margin) {
  base::require(worth_it_margin > 1, "a worth-it margin is a ratio above 1");
  const double smallest = 1 / worth_it_margin;
  const bool inside = ratio.lo90 > smallest && ratio.hi90 < worth_it_margin;
  if (ratio.lo95 > 1) {
    if (ratio.lo95 > worth_it_margin) return Verdict::longer_and_worth_having;
    return inside ? Verdict::longer_but_too_little_to_matter : Verdict::longer;
  }
  if (ratio.hi95 < 1) {
    if (ratio.hi95 < smallest) return Verdict::shorter_by_enough_to_matter;
    return inside ? Verdict::shorter_but_too_little_to_matter : Verdict::shorter;
  }
  return inside ? Verdict::practically_the_same : Verdict::not_settled;
}

std::string_view in_words(Verdict verdict) {
  switch (verdict) {
    case Verdict::longer_and_worth_having:
      return "longer, and worth having";
    case Verdict::longer:
      return "longer";
    case Verdict::longer_but_too_little_to_matter:
      return "longer but too little to matter";
    case Verdict::practically_the_same:
      return "practically the same";
    case Verdict::shorter_but_too_little_to_matter:
      return "shorter but too little to matter";
    case Verdict::shorter:
      return "shorter";
    case Verdict::shorter_by_enough_to_matter:
      return "shorter, by enough to matter";
    case Verdict::not_settled:
      break;
  }
  return "not settled";
}

bool is_settled(Verdict verdict) { return verdict != Verdict::not_settled; }

}  // namespace keenfall::verdicts
