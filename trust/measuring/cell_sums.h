// Batches of a cell's trials: simulated, answered, held against the truth and counted.
#pragma once

#include "trust/measuring/cell.h"
#include "trust/measuring/sums.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace keenfall::trust {

struct Batch {
  std::uint64_t first = 0;  // number of its first trial
  int trials = 50;
};

// The names of what is counted.
namespace counted {
inline constexpr std::string_view kTrials = "trials";
inline constexpr std::string_view kUnusable = "unusable";  // and counted as missing the truth
inline constexpr std::string_view kCoversHalf = "covers half";
inline constexpr std::string_view kCoversLevel = "covers level";
inline constexpr std::string_view kCoversLevelOfA = "covers level of A";
inline constexpr std::string_view kCoversDeciding = "covers deciding";
inline constexpr std::string_view kLongerOrShorter = "longer or shorter";
inline constexpr std::string_view kTheSame = "practically the same";
inline constexpr std::string_view kLogWidth = "log width";  // of the interval of half keenness
// Of one of kRivals, after its name; widths: log of the model's over the rival's, where both are.
inline constexpr std::string_view kRivalCovers = " covers";
inline constexpr std::string_view kBothAnswered = " both";
inline constexpr std::string_view kWider = " wider";
inline constexpr std::string_view kWiderSquared = " wider squared";
// Of trials answered by both engines.
inline constexpr std::string_view kAgree = "agree";
inline constexpr std::string_view kQuickAlone = "covers by quick alone";
inline constexpr std::string_view kFullAlone = "covers by full alone";
}  // namespace counted

// By the quick engine, with the rivals beside it.
[[nodiscard]] Sums quick_sums(const Cell& cell, TrueRatio ratio, const Batch& batch);

// By the full engine, with the quick one as its only rival.
[[nodiscard]] Sums full_sums(const Cell& cell, TrueRatio ratio, const Batch& batch);

inline constexpr std::string_view kQuickEngine = "quick";  // as a rival of the full one

}  // namespace keenfall::trust
