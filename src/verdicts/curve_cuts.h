// At which cuts the curves of one medium's arms are given, so that they can be read off side by
// side: one row of counts, of which every arm takes those within its own reach.
//
// Evenly spread on a log scale from the medium's first checkpoint, with the last cuts of every arm
// and the ends of their curves among them. Cuts as recorded, at least 0.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace keenfall::verdicts {

// A curve is carried on to so many times the arm's longest run.
inline constexpr double kCurveBeyond = 1.5;

// One for each of `longest_run_cuts` (of an arm each, above 0): rising, from 0 to kCurveBeyond
// times its own. first_cuts: of the medium's first checkpoint after the start, above 0.
[[nodiscard]] std::vector<std::vector<double>> curve_cuts(double first_cuts,
                                                          std::span<const double> longest_run_cuts);

}  // namespace keenfall::verdicts
