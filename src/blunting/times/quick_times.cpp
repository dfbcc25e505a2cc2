#include "blunting/times/quick_times.h"

#include "blunting/inference/model_spec.h"
#include "blunting/inference/place_in.h"
#include "blunting/quick/quick_fit.h"
#include "blunting/times/lives_on_grid.h"
#include "blunting/times/medium_of_times.h"
#include "numerics/apportioned.h"
#include "numerics/even_points.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <span>
#include <utility>

namespace keenfall::blunting {

namespace {

// One place of the grid of scatters.
struct ScatterPlace {
  TimeScatters at;
  double log_prior = 0;
};

// Of a scatter, even in logs. The smallest are as good as none, the largest beyond the priors.
std::vector<double> geometric(double first, double ratio, int count) {
  std::vector<double> values;
  for (int i = 0; i < count; ++i) values.push_back(first * std::pow(ratio, i));
  return values;
}

double log_half_normal(double scatter, double prior_scale) {
  return std::log(scatter) - 0.5 * std::pow(scatter / prior_scale, 2);
}

std::vector<ScatterPlace> scatters_of(const MediumOfTimes& medium, double run_scatter) {
  const PriorScales priors;
  const std::vector<double> none{1};
  const auto blocks = medium.block_count() > 0
                          ? geometric(priors.block_scatter * std::exp(-2 * priors.log_scatter_sd),
                                      std::exp(0.5 * priors.log_scatter_sd),
                                      11)
                          : none;
  const auto specimens = medium.specimen_count() > 0 ? geometric(0.01, 1.5, 11) : none;
  std::vector<ScatterPlace> places;
  for (const double block : blocks) {
    for (const double specimen : specimens) {
      ScatterPlace place{.at = {.run = run_scatter, .block = block, .specimen = specimen},
                         .log_prior = log_half_normal(run_scatter, priors.run_scatter)};
      if (medium.block_count() > 0) {
        const double z = std::log(block / priors.block_scatter) / priors.log_scatter_sd;
        place.log_prior -= 0.5 * z * z;
      }
      if (medium.specimen_count() > 0) {
        place.log_prior += log_half_normal(specimen, priors.specimen_scatter);
      }
      places.push_back(place);
    }
  }
  return places;
}

std::vector<double> weights_of(const std::vector<double>& log_weights) {
  const double largest = *std::ranges::max_element(log_weights);
  std::vector<double> weights;
  for (const double log_weight : log_weights) weights.push_back(std::exp(log_weight - largest));
  return weights;
}

// Draws of one medium's arms: points spread evenly over scatters, effects and medians together, by
// normals about the modes; then each weighed by how much more the model says of it than they do.
class MediumDrawer {
 public:
  MediumDrawer(const TimeData& data, std::size_t medium)
      : medium_(data, medium), pieces_(medium_.arms().size()) {
    for (const MediumOfTimes::Member& member : medium_.members()) {
      if (member.specimen) (void)place_in(pieces_[member.arm], *member.specimen);
    }
    std::vector<double> log_weights;
    for (const double run : geometric(0.01, 1.28, 24)) {
      for (const ScatterPlace& place : scatters_of(medium_, run)) {
        scatters_.push_back(place.at);
        normals_.push_back(medium_.effects_given(place.at));
        log_weights.push_back(normals_.back().log_evidence + place.log_prior);
      }
    }
    weights_ = weights_of(log_weights);
  }

  // Appends to the arms of the medium, and to the scatter from run to run.
  void draw(std::vector<ArmTimes>& times, Draws& run_scatter) {
    std::vector<Point> points = spread();
    std::vector<double> log_weights;
    std::optional<LivesOnGrid> grid;
    double run_of_grid = 0;
    for (Point& point : points) {
      const double run = scatters_[point.scatter].run;
      if (run_of_grid != run) grid.emplace(medium_, run_of_grid = run);
      log_weights.push_back(put(point, *grid));
    }
    const auto counts = numerics::apportioned(weights_of(log_weights), kQuickDraws);
    for (std::size_t p = 0; p < points.size(); ++p) {
      keep(points[p], counts[p], times);
      run_scatter.insert(run_scatter.end(), counts[p], scatters_[points[p].scatter].run);
    }
  }

 private:
  struct Point {
    std::size_t scatter = 0;      // index into scatters_
    Eigen::VectorXd effects;      // at first as standard normals
    std::vector<double> of_arms;  // at first shares, then log cuts of the steel
  };

  // By scatter; where in an arm's posterior is left to be found.
  [[nodiscard]] std::vector<Point> spread() const {
    const std::size_t effects = medium_.effect_count();
    const std::size_t even = effects + effects % 2;
    numerics::EvenPoints even_points(even + medium_.arms().size() + 1);
    std::vector<Point> points(kQuickDraws);
    std::vector<double> up_to(weights_.size());
    std::partial_sum(weights_.begin(), weights_.end(), up_to.begin());
    for (Point& point : points) {
      const std::span<const double> at = even_points.next();
      const auto found = std::ranges::upper_bound(up_to, at.back() * up_to.back());
      point.scatter = static_cast<std::size_t>(found - up_to.begin());
      point.effects.resize(static_cast<Eigen::Index>(effects));
      numerics::as_normals(at.first(even), {point.effects.data(), effects});
      const auto shares = at.subspan(even, medium_.arms().size());
      point.of_arms.assign(shares.begin(), shares.end());
    }
    std::ranges::stable_sort(points, {}, &Point::scatter);
    return points;
  }

  // Puts the point where its normals and shares say; its weight in logs.
  double put(Point& point, const LivesOnGrid& grid) const {
    const EffectsNormal& normal = normals_[point.scatter];
    double log_weight = 0.5 * point.effects.squaredNorm() - normal.log_evidence -
                        normal.factor.diagonal().array().log().sum();
    normal.factor.triangularView<Eigen::Lower>().transpose().solveInPlace(point.effects);
    point.effects += normal.mean;
    log_weight += medium_.log_prior_of(point.effects, scatters_[point.scatter]);
    const std::vector<ArmOnGrid> arms = grid.arms_given(point.effects);
    for (std::size_t a = 0; a < arms.size(); ++a) {
      log_weight += arms[a].log_evidence;
      point.of_arms[a] = grid.log_cuts_at(arms[a], point.of_arms[a]);
    }
    return log_weight;
  }

  void keep(const Point& point, std::size_t count, std::vector<ArmTimes>& times) const {
    for (std::size_t a = 0; a < medium_.arms().size(); ++a) {
      double pieces = 0;
      for (const std::size_t piece : pieces_[a]) {
        pieces += point.effects[static_cast<Eigen::Index>(piece)] /
                  static_cast<double>(pieces_[a].size());
      }
      ArmTimes& arm = times[medium_.arms()[a]];
      arm.log_cuts_steel.insert(arm.log_cuts_steel.end(), count, point.of_arms[a]);
      arm.log_cuts.insert(arm.log_cuts.end(), count, point.of_arms[a] + pieces);
    }
  }

  MediumOfTimes medium_;
  std::vector<std::vector<std::size_t>> pieces_;  // of each arm, among the effects
  std::vector<TimeScatters> scatters_;            // a grid
  std::vector<EffectsNormal> normals_;            // at each place of it
  std::vector<double> weights_;                   // likewise
};

// Draws come by rising scatter; so that any stretch of them is like the whole, each is followed by
// the one a golden section of the 4,000 further on, round and round (2,473 shares no factor with
// 4,000).
Draws dealt_out(const Draws& draws) {
  Draws dealt;
  for (std::size_t d = 0; d < draws.size(); ++d) dealt.push_back(draws[d * 2473 % draws.size()]);
  return dealt;
}

}  // namespace

std::vector<ArmTimes> quick_times(const TimeData& data) {
  std::vector<ArmTimes> times(data.groups.arms.size());
  Draws run_scatter;
  for (std::size_t m = 0; m < data.groups.media.size(); ++m) {
    MediumDrawer(data, m).draw(times, run_scatter);
  }
  return times;
}

TimeFit quick_posterior(const TimeData& data) {
  constexpr std::size_t kChains = 4;
  constexpr auto kEffective = static_cast<double>(kQuickDraws);
  TimeFit fit{
      .chains = kChains,
      .draws_per_chain = kQuickDraws / kChains,
      .diagnostics = {.usable = true, .ess_bulk_min = kEffective, .ess_tail_min = kEffective}};
  fit.arms.resize(data.groups.arms.size());
  for (std::size_t m = 0; m < data.groups.media.size(); ++m) {
    Draws run_scatter;
    MediumDrawer(data, m).draw(fit.arms, run_scatter);
    fit.run_scatter.push_back(dealt_out(run_scatter));
  }
  for (ArmTimes& arm : fit.arms) {
    arm.log_cuts = dealt_out(arm.log_cuts);
    arm.log_cuts_steel = dealt_out(arm.log_cuts_steel);
  }
  return fit;
}

}  // namespace keenfall::blunting
