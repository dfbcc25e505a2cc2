// For tests: what is said across the comparisons of the judgement in made_judgement_test.h,
// made by hand.
#pragma once

#include "verdicts/judgement.h"

namespace keenfall::verdicts::testing {

// Three blades in two media, as arms 0 1 2 and 3 4 5: the gap closes in the second.
inline verdicts::AcrossMedia made_media(const numerics::Interval& one) {
  using verdicts::Verdict;
  const verdicts::RatioBounds bounds{one.lo90, one.hi90, one.lo95, one.hi95};
  const auto times = [&one](double factor) {
    return numerics::Interval{.median = factor * one.median,
                              .lo90 = factor * one.lo90,
                              .hi90 = factor * one.hi90,
                              .lo95 = factor * one.lo95,
                              .hi95 = factor * one.hi95};
  };
  return {.media = {{.arms = {0, 1, 2},
                     .spread = times(0.6),
                     .order = {2, 1, 0},
                     .order_probability = 0.97},
                    {.arms = {3, 4, 5},
                     .spread = times(0.1),
                     .order = {2, 1, 0},
                     .order_probability = 0.42}},
          .pairs = {{.first = 0,
                     .second = 1,
                     .lasting_ratio = times(0.16),
                     .spread_ratio = times(0.17),
                     .probability_same_order = 0.41,
                     .probability_same_longest = 0.7}},
          .interactions = {{.a = 2,
                            .b = 0,
                            .first = 0,
                            .second = 1,
                            .ratio = times(2.9),
                            .simultaneous = bounds,
                            .verdict = Verdict::longer_and_worth_having,
                            .single_verdict = Verdict::longer_and_worth_having}},
          .agreement = {.kendall_w = 1, .p = 1.0 / 6}};
}

inline verdicts::FactorEffects made_factors(const numerics::Interval& one) {
  using verdicts::Verdict;
  const verdicts::RatioBounds bounds{one.lo90, one.hi90, one.lo95, one.hi95};
  return {.factors = {{.what = "bevel angle", .levels = {"15° per side", "20° per side"}},
                      {.what = "finish", .goes_with = {"apex angle"}, .levels = {"F400", "F800"}}},
          .effects = {{.factor = 0,
                       .level = 1,
                       .ratio = one,
                       .simultaneous = bounds,
                       .verdict = Verdict::not_settled},
                      {.factor = 1,
                       .level = 1,
                       .ratio = one,
                       .simultaneous = bounds,
                       .verdict = Verdict::practically_the_same}},
          .interactions = {{.factor = 0,
                            .level = 1,
                            .other_factor = 1,
                            .other_level = 1,
                            .ratio = one,
                            .simultaneous = bounds,
                            .verdict = Verdict::not_settled}},
          .arms = {0, 1, 2, 3}};
}

}  // namespace keenfall::verdicts::testing
