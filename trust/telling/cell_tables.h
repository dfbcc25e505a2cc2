// The tables of truth: coverage, false answers and widths of every cell, held against their bars.
#pragma once

#include "trust/measuring/cell.h"
#include "trust/measuring/sums.h"
#include "trust/telling/bar.h"

#include <span>
#include <string>

namespace keenfall::trust {

struct CellResult {
  const Cell* cell = nullptr;
  TrueRatio ratio = TrueRatio::one;
  Sums sums;  // of at least one batch
};

inline constexpr Bar kFalseAnswers{.side = Side::at_most, .limit = 0.05};
inline constexpr Bar kUnusableFits{.side = Side::at_most, .limit = 0.01};
inline constexpr Bar kWidth{.side = Side::at_most, .limit = 1.15};
inline constexpr Bar kAgreement{.side = Side::at_least, .limit = 0.97};

// 93 %, of a misspecified cell 91 %.
[[nodiscard]] Bar coverage_bar(const Cell& cell);

// The narrowest of the rivals that cover, and how wide the model's intervals are beside it.
struct NarrowestRival {
  std::string name;  // empty: none covers
  Estimate wider;
};
[[nodiscard]] NarrowestRival narrowest_of(const CellResult& result);

[[nodiscard]] std::string coverage_table(std::span<const CellResult> results);
[[nodiscard]] std::string verdicts_table(std::span<const CellResult> results);
[[nodiscard]] std::string widths_table(std::span<const CellResult> results);

// Full engine against quick one, on the same trials.
[[nodiscard]] std::string engines_table(std::span<const CellResult> results);

}  // namespace keenfall::trust
