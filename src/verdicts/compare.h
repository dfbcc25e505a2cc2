// The comparisons of arms by their blunting curves: all pairs of every medium by every method.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "trials/trial.h"
#include "verdicts/family.h"
#include "verdicts/judge.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace keenfall::verdicts {

[[nodiscard]] std::vector<Comparison> compare_all(const trials::Trial& trial,
                                                  const blunting::BluntingData& data,
                                                  const blunting::BluntingFit& fit,
                                                  const Question& question,
                                                  base::Seed seed);

// The arms (indices into BluntingData::arms, of one medium) with the draws of their cuts until
// `at`; of their steels too, unless the claim asked for is about these blades.
[[nodiscard]] Family family_of_curves(const blunting::BluntingData& data,
                                      const blunting::BluntingFit& fit,
                                      std::span<const std::size_t> arms,
                                      const At& at,
                                      std::optional<ClaimAbout> claim = std::nullopt);

}  // namespace keenfall::verdicts
