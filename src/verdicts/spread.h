// How far the blades of one medium lie apart: the standard deviation of their log lasting.
//
// The spread of posterior draws is too large, since each draw adds its own error to the spread of
// the blades. So the blades are taken as a sample about a common middle, with a spread s of its own
// (half-normal prior, scale 1), and their differences are drawn given the posterior's means and
// covariance taken as normal: the normal-normal model of meta-analysis (DerSimonian & Laird 1986;
// Gelman et al. 2013, section 5.4). Given are the blades that were cut, not those that might be.
// Method page: docs/methods/media-compared.md
#pragma once

#include "blunting/inference/full_fit.h"
#include "numerics/random.h"

#include <cstddef>
#include <span>

namespace keenfall::verdicts {

// lasting: log cuts of each blade, drawn jointly; at least two blades. Out: as many draws of the
// standard deviation (divisor n - 1) as `count`.
[[nodiscard]] blunting::Draws draws_of_spread(std::span<const blunting::Draws> lasting,
                                              std::size_t count,
                                              numerics::RandomStream& random);

}  // namespace keenfall::verdicts
