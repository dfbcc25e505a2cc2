// What the arms of a trial differ in, as factors with levels: the raw material of factor effects.
#pragma once

#include "materials/told_in.h"
#include "trials/trial.h"
#include "verdicts/crossing.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::verdicts {

struct DeclaredFactor {
  std::string what;                    // "blade", "bevel angle"
  std::vector<std::string> goes_with;  // factors that change only along with it
  std::vector<std::string> levels;     // in words, the lowest first
};

struct DeclaredFactors {
  std::vector<DeclaredFactor> factors;  // those with two levels at least
  Cells cells;                          // of those factors: a cell for each arm
};

[[nodiscard]] DeclaredFactors declared_factors(const std::vector<trials::Arm>& arms,
                                               const materials::ToldIn& told);

}  // namespace keenfall::verdicts
