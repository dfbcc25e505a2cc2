// The blunting curves of one medium drawn in text: reading against cuts, both axes by ratio, each
// line labelled where it ends. Lines differ by their dashes; past what was cut they are sparse
// dots.
#pragma once

#include "cli/look.h"
#include "verdicts/judgement.h"

#include <cstddef>
#include <string>

namespace keenfall::cli {

// Where a medium has more arms, this many are drawn, from the longest- to the shortest-lasting.
inline constexpr std::size_t kMostCurves = 8;
inline constexpr std::size_t kMostPanels = 6;

// One panel per medium and method; ends in a newline; empty when no arm has a curve.
[[nodiscard]] std::string curves_drawn(const verdicts::Judgement& judgement, const Look& look);

}  // namespace keenfall::cli
