// What is unwise about a plan, in plain sentences. Not errors: a person may know better.
//
// In: a plan without flaws (plan_flaws.h) or on its way there; what cannot be worked out is not
// advised on. Numbers in the sentences come from closed forms (two_sample_chances.h) and from what
// is assumed; rules without a source are common practice.
#pragma once

#include "planning/assumptions.h"
#include "planning/cost.h"
#include "trials/kit.h"
#include "trials/plan.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::planning {

struct Advised {
  const trials::Plan& plan;
  std::span<const trials::Claim> claims;
  const trials::Kit& kit;
  const Assumptions& assumptions;
  BenchTimes times;
};

struct Advice {
  std::string sentence;
  std::string field;  // as trials/plan.h names it: what could be changed

  bool operator==(const Advice&) const = default;
};

// The weightiest first; empty: nothing comes to mind.
[[nodiscard]] std::vector<Advice> advice_on(const Advised& advised);

}  // namespace keenfall::planning
