// A trial as it would go if what is assumed of it were true: readings made by a random stream, run
// by run as the plan has them, stopped where the plan stops them.
//
// One cutting of the plan, since media are judged each by itself. In: a plan whose arms point at
// its cuttings and whose runs, if any, at its arms.
#pragma once

#include "numerics/random.h"
#include "planning/assumptions.h"
#include "trials/plan.h"
#include "trials/reading_kind.h"
#include "trials/trial.h"

#include <cstddef>
#include <vector>

namespace keenfall::planning {

// The arms of a cutting, as a trial would hold them; in the plan's order.
[[nodiscard]] std::vector<trials::Arm> arms_of_cutting(const trials::Plan& plan,
                                                       std::size_t cutting);

struct Imagined {
  const trials::Plan& plan;
  const Assumptions& assumptions;
  const trials::ReadingKind& kind;  // that the plan reads
  std::size_t cutting = 0;          // index into Plan::cuttings
};

// plan.runs must not be empty: shuffle first (shuffled_order.h). Draws the same numbers from the
// stream whatever the true ratio.
[[nodiscard]] trials::Trial imagined_trial(const Imagined& imagined,
                                           numerics::RandomStream& random);

// What remains of it when every arm has had so many blocks.
[[nodiscard]] trials::Trial first_blocks(const trials::Trial& trial, int blocks);

}  // namespace keenfall::planning
