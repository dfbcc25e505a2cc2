#include "wear/lazy_edge.h"

#include "wear/exponential.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace keenfall::wear {

namespace {

constexpr std::size_t kLanes = 4;

// Sums in a fixed order, several at a time.
double sum_of(const std::vector<double>& numbers) {
  std::array<double, kLanes> sums{};
  const std::size_t whole = numbers.size() / kLanes * kLanes;
  for (std::size_t i = 0; i < whole; i += kLanes) {
    for (std::size_t lane = 0; lane < kLanes; ++lane) sums[lane] += numbers[i + lane];
  }
  for (std::size_t i = whole; i < numbers.size(); ++i) sums[i - whole] += numbers[i];
  return (sums[0] + sums[1]) + (sums[2] + sums[3]);
}

// The extreme of the numbers, kept apart in lanes so that it becomes vector instructions.
template <class Extreme>
double extreme_of(const std::vector<double>& numbers, const Extreme& extreme) {
  std::array<double, kLanes> found{};
  found.fill(numbers[0]);
  const std::size_t whole = numbers.size() / kLanes * kLanes;
  for (std::size_t i = 0; i < whole; i += kLanes) {
    for (std::size_t lane = 0; lane < kLanes; ++lane) {
      found[lane] = extreme(found[lane], numbers[i + lane]);
    }
  }
  for (std::size_t i = whole; i < numbers.size(); ++i) found[0] = extreme(found[0], numbers[i]);
  return std::accumulate(found.begin(), found.end(), found[0], extreme);
}

double least_of(const std::vector<double>& numbers) {
  return extreme_of(numbers, [](double a, double b) { return std::min(a, b); });
}

double greatest_of(const std::vector<double>& numbers) {
  return extreme_of(numbers, [](double a, double b) { return std::max(a, b); });
}

// Two passes over the edge, written so that they become vector instructions: the widest that the
// machine has, with the same result to the last digit. Sanitizers do not bear the choice at
// start-up.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && \
    !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define KEENFALL_WIDEST __attribute__((target_clones("avx512f", "avx2", "default")))
#else
#define KEENFALL_WIDEST
#endif

struct Wearing {
  double dose_um2 = 0;  // already scaled to the shares as stored
  double per_two_tangents = 0;
  double start_land_um = 0;
};

// Leaves the heights where the shares were.
KEENFALL_WIDEST
void wear_to_heights(double* __restrict squared_land,
                     double* __restrict share,
                     const double* __restrict unworn_height,
                     std::size_t count,
                     const Wearing& with) {
  for (std::size_t i = 0; i < count; ++i) {
    const double squared = squared_land[i] + share[i] * with.dose_um2;
    squared_land[i] = squared;
    share[i] = unworn_height[i] - (std::sqrt(squared) - with.start_land_um) * with.per_two_tangents;
  }
}

// Measured from the greatest height no share is above 1, however stiff the medium.
KEENFALL_WIDEST
void heights_to_shares(double* __restrict share,
                       std::size_t count,
                       double greatest_height_um,
                       double per_compliance) {
  for (std::size_t i = 0; i < count; ++i) {
    share[i] = vector_exp((share[i] - greatest_height_um) * per_compliance);
  }
}

#undef KEENFALL_WIDEST

}  // namespace

LazyEdge::LazyEdge(const EdgeStart& start, const StruckApex& apex)
    : segment_um_(segment_length_um(start)),
      apex_(apex),
      per_two_tangents_(1 / (2 * apex.wedge.tangent)),
      start_land_(start.finish.land_width_um),
      fold_life_(std::max(1L, std::lround(apex.rules.fold_life_cuts))) {
  const EdgeLine line = started_edge(start);
  stored_.assign(line.height_um.size(), start_land_ * start_land_);
  unworn_height_ = line.height_um;
  share_.assign(stored_.size(), 0);
  fold_.assign(stored_.size(), 0);
  chip_.assign(stored_.size(), 0);
  fold_due_.assign(stored_.size(), 0);
  mean_squared_land_ = start_land_ * start_land_;
  least_land_ = start_land_;
}

void LazyEdge::book_dose(double dose) {
  lost_.worn_um3 += dose * static_cast<double>(size()) * segment_um_ / (4 * apex_.wedge.tangent);
}

void LazyEdge::settle(double dose_um2, double compliance_um) {
  const auto count = static_cast<double>(size());
  book_dose(dose_um2);
  wear_to_heights(stored_.data(),
                  share_.data(),
                  unworn_height_.data(),
                  size(),
                  {.dose_um2 = dose_um2 * share_scale_,
                   .per_two_tangents = per_two_tangents_,
                   .start_land_um = start_land_});
  heights_to_shares(share_.data(), size(), greatest_of(share_), 1 / compliance_um);
  share_scale_ = count / sum_of(share_);
  mean_squared_land_ = sum_of(stored_) / count;
  least_land_ = std::sqrt(least_of(stored_));
}

void LazyEdge::corrode(double dose_um2, double land_growth_um) {
  book_dose(dose_um2);
  for (std::size_t i = 0; i < size(); ++i) {
    const double before = stored_[i] + share_[i] * share_scale_ * dose_um2;
    const double land = std::sqrt(before) + land_growth_um;
    stored_[i] = land * land;
    lost_.corroded_um3 += (stored_[i] - before) / (4 * apex_.wedge.tangent) * segment_um_;
  }
}

double LazyEdge::land(std::size_t i, double dose) const {
  return std::sqrt(stored_[i] + share_[i] * share_scale_ * dose);
}

void LazyEdge::set_land(std::size_t i, double land, double dose) {
  stored_[i] = land * land - share_[i] * share_scale_ * dose;
}

// The segments whose middles lie within half a length of the place.
LazyEdge::Range LazyEdge::covered(double position_um, double half_length_um) const {
  const auto count = static_cast<double>(size());
  const double first = std::ceil((position_um - half_length_um) / segment_um_ - 0.5);
  const double past = std::floor((position_um + half_length_um) / segment_um_ - 0.5) + 1;
  return {.first = static_cast<std::size_t>(std::clamp(first, 0.0, count)),
          .past = static_cast<std::size_t>(std::clamp(past, 0.0, count))};
}

template <class Change>
void LazyEdge::along(const Trace& trace, double position_um, const Change& change) {
  const Range range = covered(position_um, trace.half_length_um);
  for (std::size_t i = range.first; i < range.past; ++i) {
    const double off = (static_cast<double>(i) + 0.5) * segment_um_ - position_um;
    const double u = off / trace.half_length_um;
    change(i, trace.depth_um * std::max(0.0, 1 - u * u));
  }
}

void LazyEdge::dent(std::size_t i, double depth, double dose) {
  const double before = land(i, dose);
  set_land(i, before + 2 * apex_.wedge.tangent * depth, dose);
  lost_.dented_um3 += (before + apex_.wedge.tangent * depth) * depth * segment_um_;
}

// A fold already there hides a smaller one.
void LazyEdge::fold(std::size_t i, double height, long due) {
  if (height <= fold_[i]) return;
  fold_[i] = height;
  fold_due_[i] = due;
}

void LazyEdge::chip(std::size_t i, double depth, double dose) {
  const double gain = apex_.rules.chip_land_gain;
  const double before = land(i, dose);
  set_land(i, before + 2 * apex_.wedge.tangent * gain * depth, dose);
  unworn_height_[i] += (gain - 1) * depth;
  chip_[i] += depth;
  fold_[i] = std::max(0.0, fold_[i] - depth);  // the break takes the lip along
  lost_.chipped_um3 += (before + apex_.wedge.tangent * depth) * depth * segment_um_;
}

void LazyEdge::strike(const ParticleHit& hit, long cut, double dose_um2) {
  const auto at = std::min(size() - 1, static_cast<std::size_t>(hit.position_um / segment_um_));
  const HitDamage damage = damage_of(hit, apex_, land(at, dose_um2));
  ++counts_.hits;
  if (damage.dent.depth_um > 0) {
    ++counts_.dents;
    along(damage.dent, hit.position_um, [&](std::size_t i, double depth) {
      dent(i, depth, dose_um2);
    });
  }
  if (damage.fold.depth_um > 0) {
    ++counts_.folds;
    const long due = cut + fold_life_;
    along(
        damage.fold, hit.position_um, [&](std::size_t i, double height) { fold(i, height, due); });
    due_.push_back({.cut = due, .range = covered(hit.position_um, damage.fold.half_length_um)});
  }
  if (damage.chip.depth_um > 0) {
    ++counts_.chips;
    along(damage.chip, hit.position_um, [&](std::size_t i, double depth) {
      chip(i, depth, dose_um2);
    });
  }
}

void LazyEdge::twist(const TwistLoad& load, double patch_length_um, double dose_um2) {
  // The segments whose middles lie in the patch, its heel-side end counted in.
  const auto first_from = [&](std::size_t patches) {
    const double from = static_cast<double>(patches) * patch_length_um;
    return std::min(size(), static_cast<std::size_t>(std::ceil(from / segment_um_ - 0.5)));
  };
  const Range patch{.first = first_from(load.patch), .past = first_from(load.patch + 1)};
  bool bent = false;
  for (std::size_t i = patch.first; i < patch.past; ++i) {
    const double width = land(i, dose_um2);
    const double q = load.line_load_newton_per_mm;
    if (const auto depth = twist_chip_depth_um(apex_.steel, apex_.wedge, width, q)) {
      chip(i, *depth, dose_um2);
      bent = true;
    } else if (const auto hinge = twist_fold_height_um(apex_.steel, apex_.wedge, width, q)) {
      fold(i, *hinge, load.cut + fold_life_);
      bent = true;
    }
  }
  if (!bent) return;
  ++counts_.twists;
  due_.push_back({.cut = load.cut + fold_life_, .range = patch});
}

long LazyEdge::next_fold_due() const { return due_.empty() ? -1 : due_.front().cut; }

void LazyEdge::drop_folds(double dose_um2) {
  const long cut = next_fold_due();
  const double t = apex_.wedge.tangent;
  while (next_fold_due() == cut && cut >= 0) {
    const Range range = due_.front().range;
    due_.pop_front();
    for (std::size_t i = range.first; i < range.past; ++i) {
      if (fold_[i] == 0 || fold_due_[i] > cut) continue;
      const double before = land(i, dose_um2);
      set_land(i, before + 2 * t * fold_[i], dose_um2);
      lost_.folded_um3 += (before + t * fold_[i]) * fold_[i] * segment_um_;
      fold_[i] = 0;
    }
  }
}

EdgeLine LazyEdge::line(double dose_um2) const {
  EdgeLine line{.segment_length_um = segment_um_,
                .land_width_um = std::vector<double>(size()),
                .height_um = std::vector<double>(size()),
                .fold_height_um = fold_,
                .chip_depth_um = chip_};
  for (std::size_t i = 0; i < size(); ++i) {
    line.land_width_um[i] = land(i, dose_um2);
    line.height_um[i] =
        unworn_height_[i] - (line.land_width_um[i] - start_land_) * per_two_tangents_;
  }
  return line;
}

std::vector<double> LazyEdge::load_shares() const {
  std::vector<double> shares = share_;
  for (double& share : shares) share *= share_scale_;
  return shares;
}

}  // namespace keenfall::wear
