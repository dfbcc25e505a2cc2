// What a plan that a person made lacks before it can be sealed, each with its field and what would
// be accepted. An empty answer: the plan can be sealed and cut.
//
// Fields are named as in trials/plan.h; where there are several of a kind with their number, from
// 0: "cuttings[1].checkpoint_cuts". What is only unwise is advice (advice.h).
#pragma once

#include "base/result.h"
#include "trials/kit.h"
#include "trials/plan.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::planning {

// What a plan is for.
enum class Purpose {
  to_compare,
  own_repeatability  // the scatter of one's own runs: one arm is enough (own_repeatability.h)
};

// A plan with one arm compares nothing: it can only measure one's own repeatability.
[[nodiscard]] Purpose purpose_of(const trials::Plan& plan);

// claims: at least one belongs to a plan. kit: where blades and kinds of reading are known from; a
// kit without blades knows of none, and then blades are not asked after.
[[nodiscard]] std::vector<base::Problem> plan_flaws(const trials::Plan& plan,
                                                    std::span<const trials::Claim> claims,
                                                    const trials::Kit& kit,
                                                    Purpose purpose = Purpose::to_compare);

// The kind that the plan reads: one's own, or one that is known anyway; nullptr where neither.
[[nodiscard]] const trials::ReadingKind* kind_read(const trials::Plan& plan,
                                                   const trials::Kit& kit);

}  // namespace keenfall::planning
