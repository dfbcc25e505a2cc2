// Do several judges put the same things in the same order? Kendall's coefficient of concordance W.
//
// W runs from 0 (no agreement) to 1 (one order). Here a judge is a medium and the things are
// blades. p: how often judges who rank by chance would agree at least as well; over all rankings
// where there are at most `most_counted`, else over random ones, from a seed. Ties share their mean
// rank and are corrected for. Kendall & Babington Smith 1939 (Ann. Math. Stat. 10, 275-287); Siegel
// & Castellan 1988, section 9.7. Method page: docs/methods/media-compared.md
#pragma once

#include "numerics/rearrangement.h"

#include <span>
#include <vector>

namespace keenfall::numerics {

struct RankAgreement {
  double w = 0;
  double chi_square = 0;  // judges (things - 1) W, with things - 1 degrees of freedom
  double p = 1;
  bool exact = true;
  double monte_carlo_error = 0;  // standard error of p; 0 when exact
};

// scores[judge][thing]: at least two judges, at least two things, as many for each judge; higher
// scores have higher ranks. Judges for whom everything ties say nothing: W is 0 when all are so.
[[nodiscard]] RankAgreement rank_agreement(std::span<const std::vector<double>> scores,
                                           const Rearranging& how);

struct RankSums {
  std::vector<double> sums;  // of each thing's ranks, over the judges
  std::size_t judges = 2;
  double tie_correction = 0;  // sum of t^3 - t over the groups of t tied things of all judges
};

// W alone, from published rank sums.
[[nodiscard]] double concordance_of(const RankSums& ranks);

}  // namespace keenfall::numerics
