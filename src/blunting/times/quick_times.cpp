#include "blunting/times/quick_times.h"

#include "blunting/inference/model_spec.h"
#include "blunting/quick/quick_fit.h"
#include "blunting/times/interval_likelihood.h"
#include "blunting/times/time_density.h"
#include "numerics/apportioned.h"
#include "numerics/even_points.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace keenfall::blunting {

namespace {

constexpr double kFarthest = 4;  // prior sds of an arm's median from its centre
constexpr int kPlaces = 400;     // of an arm's median
constexpr int kScatters = 24;    // from 0.01 up by the ratio, to about 3
constexpr double kSmallest = 0.01;
constexpr double kRatio = 1.28;

// An arm's median at one scatter: how much of it lies up to each place, and all of it in logs.
struct ArmOnGrid {
  std::vector<double> shares;
  double log_evidence = 0;
};

class MediumOnGrid {
 public:
  MediumOnGrid(const TimeData& data, std::size_t medium) : data_(data) {
    for (std::size_t a = 0; a < data.groups.arms.size(); ++a) {
      if (data.groups.medium_of_arm[a] == medium) arms_.push_back(a);
    }
    const double reach = kFarthest * PriorScales{}.log_half_keenness_sd;
    for (int i = 0; i < kPlaces; ++i) {
      places_.push_back(data.log_centre + reach * (2.0 * i / (kPlaces - 1) - 1));
    }
  }

  // Appends draws to the arms of the medium.
  void draw(std::vector<ArmTimes>& times) const {
    std::vector<std::vector<ArmOnGrid>> at_scatters;
    std::vector<double> weights;
    for (int s = 0; s < kScatters; ++s) {
      const double scatter = kSmallest * std::pow(kRatio, s);
      const double z = scatter / PriorScales{}.run_scatter;
      double log_weight = std::log(scatter) - 0.5 * z * z;
      std::vector<ArmOnGrid> arms;
      for (const std::size_t arm : arms_) {
        arms.push_back(arm_at(arm, scatter));
        log_weight += arms.back().log_evidence;
      }
      weights.push_back(log_weight);
      at_scatters.push_back(std::move(arms));
    }
    const double largest = *std::ranges::max_element(weights);
    for (double& weight : weights) weight = std::exp(weight - largest);
    const auto draws = numerics::apportioned(weights, kQuickDraws);
    numerics::EvenPoints points(arms_.size());
    for (std::size_t s = 0; s < weights.size(); ++s) {
      for (std::size_t d = 0; d < draws[s]; ++d) {
        const std::vector<double>& at = points.next();
        for (std::size_t i = 0; i < arms_.size(); ++i) {
          times[arms_[i]].log_cuts.push_back(place_of(at_scatters[s][i], at[i]));
        }
      }
    }
  }

 private:
  [[nodiscard]] ArmOnGrid arm_at(std::size_t arm, double scatter) const {
    const PriorScales priors;
    const double scale = std::hypot(scatter, kTestError) * std::numbers::sqrt3 / std::numbers::pi;
    std::vector<double> heights;
    for (const double place : places_) {
      const double z = (place - data_.log_centre) / priors.log_half_keenness_sd;
      double height = -0.5 * z * z;
      for (std::size_t r = 0; r < data_.runs.size(); ++r) {
        if (data_.groups.runs[r].arm != arm) continue;
        height += likelihood_of_bounds(data_.runs[r].log_bounds(), place, scale).log_likelihood;
      }
      heights.push_back(height);
    }
    const double top = *std::ranges::max_element(heights);
    ArmOnGrid grid;
    double sum = 0;
    for (const double height : heights) {
      sum += std::exp(height - top);
      grid.shares.push_back(sum);
    }
    for (double& share : grid.shares) share /= sum;
    grid.log_evidence = top + std::log(sum);
    return grid;
  }

  // Where the share is reached, along a straight line within a step; a step is centred on its
  // place.
  [[nodiscard]] double place_of(const ArmOnGrid& grid, double share) const {
    const auto above = std::ranges::upper_bound(grid.shares, share);
    const auto i =
        std::min(static_cast<std::size_t>(above - grid.shares.begin()), grid.shares.size() - 1);
    const double below = i == 0 ? 0 : grid.shares[i - 1];
    const double step = places_[1] - places_[0];
    const double within = grid.shares[i] > below ? (share - below) / (grid.shares[i] - below) : 0.5;
    return places_[i] + (within - 0.5) * step;
  }

  const TimeData& data_;
  std::vector<std::size_t> arms_;
  std::vector<double> places_;
};

}  // namespace

std::optional<std::vector<ArmTimes>> quick_times(const TimeData& data) {
  if (data.groups.block_count > 0 || data.groups.specimen_count > 0) return std::nullopt;
  std::vector<ArmTimes> times(data.groups.arms.size());
  for (std::size_t m = 0; m < data.groups.media.size(); ++m) MediumOnGrid(data, m).draw(times);
  for (ArmTimes& arm : times) arm.log_cuts_steel = arm.log_cuts;
  return times;
}

}  // namespace keenfall::blunting
