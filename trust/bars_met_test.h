// The short form of the tables of truth, for tests: few trials, so bars are held with the
// Monte-Carlo errors of so few. Of tests alone.
#pragma once

#include "trust/measuring/cell_sums.h"
#include "trust/measuring/rivals.h"
#include "trust/telling/cell_tables.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace keenfall::trust::testing {

inline const Cell& cell_called(std::string_view name) {
  return *std::ranges::find(cells(), name, &Cell::name);
}

// By the quick engine, at both true ratios.
inline void expect_bars_met(const Cell& cell, int trials) {
  for (const TrueRatio ratio : {TrueRatio::one, TrueRatio::margin}) {
    const CellResult result{
        .cell = &cell, .ratio = ratio, .sums = quick_sums(cell, ratio, {.trials = trials})};
    const auto measured = [&result](std::string_view what) {
      return share(sum_of(result.sums, what), sum_of(result.sums, counted::kTrials));
    };
    const std::string where =
        std::string(cell.name) + (ratio == TrueRatio::one ? ", alike" : ", at the margin");
    for (const auto what :
         {counted::kCoversHalf, counted::kCoversLevel, counted::kCoversLevelOfA}) {
      EXPECT_FALSE(is_missed(measured(what), coverage_bar(cell))) << where << ": " << what;
    }
    const auto wrong = ratio == TrueRatio::one ? counted::kLongerOrShorter : counted::kTheSame;
    EXPECT_FALSE(is_missed(measured(wrong), kFalseAnswers)) << where << ": " << wrong;
    EXPECT_FALSE(is_missed(measured(counted::kUnusable), kUnusableFits)) << where;
  }
}

}  // namespace keenfall::trust::testing
