#include "trust/measuring/cell_trial.h"

#include "trust/measuring/apex_pair.h"
#include "trust/measuring/text_hash.h"

#include <string_view>

namespace keenfall::trust {

namespace {

// Trials of different cells and ratios share no chance.
std::uint64_t seed_of(const Cell& cell, TrueRatio ratio, std::uint64_t number) {
  return text_hash(cell.name) + (ratio == TrueRatio::margin ? 1'000'000'000ULL : 0) + number;
}

TrueBlade true_blade(const blunting::Truth& truth, std::string_view blade) {
  const blunting::LogLogistic curve = true_curve(truth, blade);
  return {.log_half_cuts = curve.log_half_keenness,
          .log_level_cuts = log_cuts_to_level(curve, kLevel),
          .curve = curve};
}

CellTrial made(blunting::Truth truth, TrueRatio ratio, std::uint64_t seed) {
  if (ratio == TrueRatio::margin) truth.ratio *= kMargin;
  return {.trial = simulated(truth, seed),
          .key = {.kind = "thread_push", .thread = ""},
          .a = "A",
          .b = "B",
          .true_a = true_blade(truth, "A"),
          .true_b = true_blade(truth, "B")};
}

}  // namespace

CellTrial cell_trial(const Cell& cell, TrueRatio ratio, std::uint64_t number) {
  const std::uint64_t seed = seed_of(cell, ratio, number);
  const auto* truth = std::get_if<blunting::Truth>(&cell.made);
  CellTrial trial = truth != nullptr ? made(*truth, ratio, seed)
                                     : apex_trial(std::get<ApexPair>(cell.made), ratio, seed);
  trial.medium = cell.medium;
  return trial;
}

}  // namespace keenfall::trust
