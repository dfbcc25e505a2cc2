// Where the arms of one family are compared: at which level, or at which common reading.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "verdicts/judge.h"

#include <span>

namespace keenfall::verdicts {

// The level at which an arm counts as worn out: asked for, else 4 times the start, or the kind's
// own level where its readings hardly rise so far.
[[nodiscard]] double stop_level_of(const Question& question, const trials::ReadingKind& kind);

struct FamilyLevel {
  At at;
  bool starts_differ = false;  // the reason for a common reading nobody asked for
};

// arms: indices of the arms of the family.
[[nodiscard]] FamilyLevel compared_at(const Question& question,
                                      const blunting::BluntingData& data,
                                      const blunting::BluntingFit& fit,
                                      std::span<const std::size_t> arms);

}  // namespace keenfall::verdicts
