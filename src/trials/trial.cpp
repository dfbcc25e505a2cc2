#include "trials/trial.h"

#include <algorithm>

namespace keenfall::trials {

std::vector<Arm> arms_of(const Trial& trial) {
  std::vector<Arm> arms;
  for (const Run& run : trial.runs) {
    if (std::ranges::find(arms, run.arm) == arms.end()) arms.push_back(run.arm);
  }
  return arms;
}

const Blade* find_blade(const Trial& trial, const std::string& name) {
  const auto found = std::ranges::find(trial.blades, name, &Blade::name);
  return found == trial.blades.end() ? nullptr : &*found;
}

}  // namespace keenfall::trials
