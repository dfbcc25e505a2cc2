// One family of arms from two fits: some were read, the others tested only.
//
// The two posteriors are independent, so their draws may be laid side by side in any way; as many
// are taken of each, and no chain beside the one that was drawn from the same random numbers.
#pragma once

#include "blunting/inference/fit_diagnostics.h"
#include "verdicts/family.h"
#include "verdicts/read_and_tested.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace keenfall::verdicts {

struct JoinedFamily {
  Family family;            // the arms read first, then those tested; indices count from 0 on
  std::vector<Pair> pairs;  // every arm read with every arm tested
};

// `level`: times the start reading, where the curves are compared with the test.
[[nodiscard]] JoinedFamily joined_family(const ReadEdges& read,
                                         const TestedEdges& tested,
                                         const ReadAndTestedArms& arms,
                                         double level,
                                         std::optional<ClaimAbout> claim);

// The same arms, the curves' draws from the quick engine (quick_fit.h): `quick` as
// BluntingData::arms.
[[nodiscard]] Family with_quick_curves(const JoinedFamily& joined,
                                       const ReadEdges& read,
                                       const ReadAndTestedArms& arms,
                                       const std::vector<blunting::ArmDraws>& quick);

// `count` draws evenly chosen of all, beginning `turned_by` draws in and going round.
[[nodiscard]] blunting::Draws evenly_chosen(const blunting::Draws& draws,
                                            std::size_t count,
                                            std::size_t turned_by);

}  // namespace keenfall::verdicts
