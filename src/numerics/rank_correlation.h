// How two quantities go with each other by rank: Spearman's coefficient, with ties sharing their
// mean rank (Pearson's correlation of mid-ranks; Siegel & Castellan 1988, from memory).
#pragma once

#include <span>

namespace keenfall::numerics {

// -1 to 1; 0 where one of both is constant. Of one length, numbers throughout.
[[nodiscard]] double rank_correlation(std::span<const double> a, std::span<const double> b);

}  // namespace keenfall::numerics
