// What a plan lacks in how its runs are read, stopped, repeated, looked at and ordered; the rest is
// in plan_flaws.cpp.
#pragma once

#include "base/result.h"
#include "trials/kit.h"
#include "trials/plan.h"

#include <algorithm>
#include <functional>
#include <string>
#include <vector>

namespace keenfall::planning {

using Flaws = std::vector<base::Problem>;

void add_flaw(Flaws& flaws,
              base::ProblemKind kind,
              std::string sentence,
              base::Place place,
              std::string accepted);

[[nodiscard]] bool rises(const auto& numbers) {
  return std::ranges::adjacent_find(numbers, std::ranges::greater_equal{}) == numbers.end();
}

// Whether the plan's runs are an order of it: each arm once a block, orders 1, 2, 3 ..., blocks one
// after the other. False of a plan that is not shuffled yet.
[[nodiscard]] bool is_in_order(const trials::Plan& plan);

void add_flaws_of_running(Flaws& flaws, const trials::Plan& plan, const trials::Kit& kit);

}  // namespace keenfall::planning
