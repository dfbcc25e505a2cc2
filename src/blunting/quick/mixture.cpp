#include "blunting/quick/mixture.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace keenfall::blunting {

namespace {

// One hyperparameter in the coordinate it is integrated in: the log of a scatter, or lambda itself.
struct Axis {
  double Hyperparameters::*value = nullptr;
  bool is_scatter = true;
  bool is_half_normal = true;  // else normal about `centre` in its coordinate
  double centre = 0;
  double scale = 1;
  double place = 0;  // of the mode
  double spread = 0.5;

  [[nodiscard]] double log_prior(double at) const {
    const double z = is_half_normal ? std::exp(at) / scale : (at - centre) / scale;
    return -0.5 * z * z + (is_half_normal ? at : 0);
  }
  void put(Hyperparameters& at, double where) const {
    at.*value = is_scatter ? std::exp(where) : where;
  }
};

Axis half_normal(double Hyperparameters::*value, double scale) {
  return {.value = value, .scale = scale, .place = std::log(0.5 * scale)};
}

Axis log_normal(double Hyperparameters::*value, double median, double log_sd) {
  const double centre = std::log(median);
  return {
      .value = value, .is_half_normal = false, .centre = centre, .scale = log_sd, .place = centre};
}

// The scatter from run to run stands first.
std::vector<Axis> axes_of(const ScatterGroup& group, const PriorScales& priors) {
  std::vector<Axis> axes{half_normal(&Hyperparameters::run, priors.run_scatter),
                         half_normal(&Hyperparameters::start, priors.start_scatter)};
  if (group.parts().start_effect) {
    axes.push_back({.value = &Hyperparameters::start_effect,
                    .is_scatter = false,
                    .is_half_normal = false,
                    .scale = priors.start_effect});
  }
  if (group.parts().shared_shape) {
    axes.push_back(
        log_normal(&Hyperparameters::shape, priors.shape_scatter, priors.log_scatter_sd));
  }
  if (group.has_blocks()) {
    axes.push_back(
        log_normal(&Hyperparameters::block, priors.block_scatter, priors.log_scatter_sd));
  }
  if (group.has_specimens()) {
    axes.push_back(half_normal(&Hyperparameters::specimen, priors.specimen_scatter));
  }
  return axes;
}

Hyperparameters at_modes(const std::vector<Axis>& axes) {
  Hyperparameters at;
  for (const Axis& axis : axes) axis.put(at, axis.place);
  return at;
}

// One axis after another, to the top of a parabola through three places.
void climb(const ScatterGroup& group, std::vector<Axis>& axes) {
  constexpr double kLongestStep = 1.5;  // spreads
  Hyperparameters at = at_modes(axes);
  for (Axis& axis : axes) {
    const auto height = [&](double place) {
      axis.put(at, place);
      return group.given(at).log_evidence + axis.log_prior(place);
    };
    const double below = height(axis.place - axis.spread);
    const double here = height(axis.place);
    const double above = height(axis.place + axis.spread);
    const double bend = below - 2 * here + above;
    double steps = above > below ? kLongestStep : -kLongestStep;
    if (bend < -0.05) {
      steps = std::clamp(0.5 * (below - above) / bend, -kLongestStep, kLongestStep);
    }
    axis.place += steps * axis.spread;
    if (bend < -0.05) axis.spread *= std::clamp(1 / std::sqrt(-bend), 0.4, 2.0);
    axis.put(at, axis.place);
  }
}

class Integration {
 public:
  Integration(const ScatterGroup& group, std::vector<Axis> axes)
      : group_(group), axes_(std::move(axes)), at_(at_modes(axes_)) {
    if (!group_.has_specimens()) return;
    specimen_ = axes_.back();
    axes_.pop_back();
  }

  // A star: the mode, and a place either way on each axis but those of runs and specimens, so far
  // out and so weighed that a normal posterior has its mean and variance (the unscented rule of
  // Julier & Uhlmann 2004, Proc. IEEE 92, 401-422, from memory).
  std::vector<MixturePart> parts() {
    const double others = static_cast<double>(axes_.size()) - 1;
    const double square = std::max(3.0, others + 1);  // of how far out, in spreads
    add_along_scatters(std::log(1 - others / square));
    for (std::size_t i = 1; i < axes_.size(); ++i) {
      const Axis& axis = axes_[i];
      for (const int way : {-1, 1}) {
        const double place = axis.place + way * std::sqrt(square) * axis.spread;
        axis.put(at_, place);
        add_along_scatters(std::log(0.5 / square) + 0.5 * square + axis.log_prior(place) -
                           axis.log_prior(axis.place));
      }
      axis.put(at_, axis.place);
    }
    double total = 0;
    for (MixturePart& part : parts_) total += part.weight = std::exp(part.weight - largest_);
    for (MixturePart& part : parts_) part.weight /= total;
    return std::move(parts_);
  }

 private:
  // Two or three pieces of a blade hardly know how they scatter, so that scatter is far from normal
  // even in its log, and is integrated as that of the runs is.
  void add_along_scatters(double log_weight) {
    if (!specimen_) {
      (void)add_along_run_scatter(log_weight);
      return;
    }
    along(*specimen_, [&](double place) {
      specimen_->put(at_, place);
      return add_along_run_scatter(log_weight + specimen_->log_prior(place));
    });
    specimen_->put(at_, specimen_->place);
  }

  bool add_along_run_scatter(double log_weight) {
    const std::size_t before = parts_.size();
    along(axes_.front(), [&](double place) { return add(place, log_weight); });
    return parts_.size() > before;
  }

  // Even steps from the mode both ways, until a step adds nothing.
  template <class Add>
  static void along(const Axis& axis, const Add& adds) {
    const double step = std::clamp(1.1 * axis.spread, 0.01, 0.35);
    for (const int way : {1, -1}) {
      double place = axis.place + (way > 0 ? 0 : -step);
      while (std::abs(place - axis.place) < kFarthest && adds(place)) place += way * step;
    }
  }

  // Whether it weighs anything beside the heaviest.
  bool add(double run_place, double log_weight) {
    axes_.front().put(at_, run_place);
    GivenNormal given = group_.given(at_);
    const double weight = log_weight + given.log_evidence + axes_.front().log_prior(run_place);
    largest_ = std::max(largest_, weight);
    if (weight < largest_ - kNegligible) return false;
    parts_.push_back({.at = at_, .given = std::move(given), .weight = weight});
    return true;
  }

  static constexpr double kNegligible = 6;  // in logs
  static constexpr double kFarthest = 8;    // likewise

  const ScatterGroup& group_;
  std::vector<Axis> axes_;        // the scatter from run to run, then those of the star
  std::optional<Axis> specimen_;  // the scatter between specimens, if any
  Hyperparameters at_;
  std::vector<MixturePart> parts_;
  double largest_ = -HUGE_VAL;
};

}  // namespace

std::vector<MixturePart> mixture_of(ScatterGroup& group, const PriorScales& priors) {
  constexpr int kFirstRounds = 6;
  constexpr int kLastRounds = 3;
  std::vector<Axis> axes = axes_of(group, priors);
  group.settle({}, kFirstRounds);
  for (int round = 0; round < 3; ++round) climb(group, axes);
  group.settle(at_modes(axes), kLastRounds);
  group.centre_on_mean(at_modes(axes));
  for (int round = 0; round < 2; ++round) climb(group, axes);
  return Integration(group, std::move(axes)).parts();
}

}  // namespace keenfall::blunting
