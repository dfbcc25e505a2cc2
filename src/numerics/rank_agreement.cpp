#include "numerics/rank_agreement.h"

#include "base/require.h"
#include "numerics/random.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace keenfall::numerics {

namespace {

using Ranks = std::vector<std::vector<double>>;  // [judge][thing]

double spread_of_sums(const std::vector<double>& sums) {
  const double mean =
      std::accumulate(sums.begin(), sums.end(), 0.0) / static_cast<double>(sums.size());
  double spread = 0;
  for (const double sum : sums) spread += (sum - mean) * (sum - mean);
  return spread;
}

std::vector<double> sums_of(const Ranks& ranks) {
  std::vector<double> sums(ranks.front().size());
  for (const std::vector<double>& judge : ranks) {
    for (std::size_t i = 0; i < sums.size(); ++i) sums[i] += judge[i];
  }
  return sums;
}

double tie_correction_of(std::vector<double> ranks) {
  std::ranges::sort(ranks);
  double correction = 0;
  for (auto first = ranks.begin(); first != ranks.end();) {
    const auto end = std::upper_bound(first, ranks.end(), *first);
    const auto tied = static_cast<double>(end - first);
    correction += tied * tied * tied - tied;
    first = end;
  }
  return correction;
}

// How often rankings by chance agree at least as well as the one seen.
class ChanceAgreement {
 public:
  explicit ChanceAgreement(Ranks ranks) : ranks_(std::move(ranks)) {
    const double seen = spread_of_sums(sums_of(ranks_));
    least_ = seen - 1e-9 * (1 + seen);
  }

  // The first judge stays: only how the others stand to it counts.
  double share_of_all() {
    count_ = 0;
    agreeing_ = 0;
    for (std::size_t j = 1; j < ranks_.size(); ++j) std::ranges::sort(ranks_[j]);
    go_through(1, ranks_.front());
    return agreeing_ / count_;
  }

  double share_of_random(const Rearranging& how) {
    RandomStream random(how.seed, 0);
    double agreeing = 1;  // the one that was seen
    for (int i = 0; i < how.random_count; ++i) {
      for (std::size_t j = 1; j < ranks_.size(); ++j) shuffle(ranks_[j], random);
      if (spread_of_sums(sums_of(ranks_)) >= least_) ++agreeing;
    }
    return agreeing / (how.random_count + 1.0);
  }

 private:
  static void shuffle(std::vector<double>& ranks, RandomStream& random) {
    for (std::size_t i = ranks.size(); i > 1; --i) std::swap(ranks[i - 1], ranks[random.below(i)]);
  }

  // Tied rankings that look alike are met once only, and each stands for equally many.
  void go_through(std::size_t judge, const std::vector<double>& sums) {
    if (judge == ranks_.size()) {
      ++count_;
      if (spread_of_sums(sums) >= least_) ++agreeing_;
      return;
    }
    std::vector<double> with(sums.size());
    do {
      for (std::size_t i = 0; i < sums.size(); ++i) with[i] = sums[i] + ranks_[judge][i];
      go_through(judge + 1, with);
    } while (std::next_permutation(ranks_[judge].begin(), ranks_[judge].end()));
  }

  Ranks ranks_;
  double least_ = 0;
  double count_ = 0;
  double agreeing_ = 0;
};

}  // namespace

double concordance_of(const RankSums& ranks) {
  base::require(ranks.judges >= 2 && ranks.sums.size() >= 2,
                "agreement needs at least two judges and two things");
  const auto m = static_cast<double>(ranks.judges);
  const auto n = static_cast<double>(ranks.sums.size());
  const double largest = m * m * (n * n * n - n) - m * ranks.tie_correction;
  return largest > 0 ? 12 * spread_of_sums(ranks.sums) / largest : 0;
}

RankAgreement rank_agreement(std::span<const std::vector<double>> scores, const Rearranging& how) {
  base::require(scores.size() >= 2 && scores.front().size() >= 2,
                "agreement needs at least two judges and two things");
  Ranks ranks;
  double tie_correction = 0;
  for (const std::vector<double>& judge : scores) {
    base::require(judge.size() == scores.front().size(), "every judge ranks the same things");
    ranks.push_back(mid_ranks(judge));
    tie_correction += tie_correction_of(ranks.back());
  }
  const std::size_t things = scores.front().size();
  RankAgreement found;
  found.w = concordance_of(
      {.sums = sums_of(ranks), .judges = ranks.size(), .tie_correction = tie_correction});
  found.chi_square = static_cast<double>(ranks.size()) * static_cast<double>(things - 1) * found.w;
  const double rankings = std::exp(static_cast<double>(ranks.size() - 1) *
                                   std::lgamma(static_cast<double>(things) + 1));
  found.exact = rankings <= how.most_counted;
  ChanceAgreement chance(std::move(ranks));
  found.p = found.exact ? chance.share_of_all() : chance.share_of_random(how);
  if (!found.exact) found.monte_carlo_error = std::sqrt(found.p * (1 - found.p) / how.random_count);
  return found;
}

}  // namespace keenfall::numerics
