// What each declared factor does to lasting, where the arms are crossed: multipliers of cuts.
// Values only; factor_effects.h finds them.
//
// A main effect is a level's cuts against those of the factor's first level, averaged in logs over
// the cells of the other factors; an interaction is how many times as large one factor's effect is
// at a level of another as at that one's first level. Ratios: dimensionless.
#pragma once

#include "numerics/interval.h"
#include "verdicts/compared_where.h"
#include "verdicts/verdict.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::verdicts {

struct Factor {
  std::string what;                    // "bevel angle", "steel", "medium"
  std::vector<std::string> goes_with;  // what changes along with it: "finish"
  std::vector<std::string> levels;     // in words, the lowest first; the one compared against

  bool operator==(const Factor&) const = default;
};

struct FactorEffect {
  std::size_t factor = 0;  // indices into FactorEffects::factors and Factor::levels
  std::size_t level = 0;   // against level 0
  numerics::Interval ratio;
  RatioBounds simultaneous;  // over all effects and interactions here
  Verdict verdict = Verdict::not_settled;

  bool operator==(const FactorEffect&) const = default;
};

struct FactorInteraction {
  std::size_t factor = 0;
  std::size_t level = 0;
  std::size_t other_factor = 0;
  std::size_t other_level = 0;
  numerics::Interval ratio;
  RatioBounds simultaneous;
  Verdict verdict = Verdict::not_settled;

  bool operator==(const FactorInteraction&) const = default;
};

struct FactorEffects {
  At at;
  std::vector<Factor> factors;  // two or more
  std::vector<FactorEffect> effects;
  std::vector<FactorInteraction> interactions;
  std::vector<std::size_t> arms;           // of the crossed table: indices into Judgement::arms
  std::vector<std::size_t> arms_left_out;  // that are not part of it
  std::vector<std::string> remarks;

  bool operator==(const FactorEffects&) const = default;
};

}  // namespace keenfall::verdicts
