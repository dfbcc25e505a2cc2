// What an engine answers to one simulated trial, by the rules the product judges by (verdicts).
//
// The pair is blade A over blade B, in the medium the cell is about; all in natural logs of cuts.
// An engine that could not answer gives no answer.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "numerics/interval.h"
#include "trust/measuring/cell_trial.h"
#include "verdicts/compared_where.h"
#include "verdicts/verdict.h"

#include <cstdint>
#include <optional>

namespace keenfall::trust {

struct PairAnswer {
  numerics::Interval half;        // log ratio of half keenness
  numerics::Interval level;       // of cuts to kLevel times the start
  numerics::Interval level_a;     // log of A's own cuts to that level
  verdicts::At at;                // where the rules compare the pair
  verdicts::RatioBounds decides;  // of the ratio there, A over B
  verdicts::Verdict verdict = verdicts::Verdict::not_settled;
};

// Absent: not usable, as below.
[[nodiscard]] std::optional<PairAnswer> answer_of(const CellTrial& trial,
                                                  const blunting::BluntingData& data,
                                                  const blunting::BluntingFit& fit);

// By the default model.
[[nodiscard]] std::optional<PairAnswer> quick_answer(const CellTrial& trial);
[[nodiscard]] std::optional<PairAnswer> full_answer(const CellTrial& trial, std::uint64_t seed);

}  // namespace keenfall::trust
