// The pictures of how many times as long one edge of a medium lasts as another: all pairs at the
// level they are compared at, and single pairs level by level.
#pragma once

#include "page/figures_of_medium.h"

#include <vector>

namespace keenfall::page {

// One, or none where nothing is compared.
[[nodiscard]] std::vector<Figure> ratio_figures(const MediumShown& shown);

// One for each pair whose ratio changes with the level, at most kMostLevelFigures.
[[nodiscard]] std::vector<Figure> level_figures(const MediumShown& shown);

inline constexpr std::size_t kMostLevelFigures = 6;

}  // namespace keenfall::page
