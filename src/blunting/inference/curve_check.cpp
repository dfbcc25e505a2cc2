#include "blunting/inference/curve_check.h"

#include "blunting/curves/log_logistic.h"
#include "blunting/inference/robust_errors.h"

#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace keenfall::blunting {

namespace {

constexpr std::size_t kDrawsChecked = 2000;
constexpr double kSmallestOffset = 0.05;  // of the log reading: less would not change an answer
constexpr double kSmallestP = 0.01;
// Fewer degrees of freedom do not show how much runs differ: an arm's own, then the trial's.
constexpr double kEnoughDegrees = 8;
// A place whose readings keep less than this share of their scatter was placed by them: the curve
// goes where they lie, and the little they keep is known too roughly to speak against it.
constexpr double kSmallestShareLeft = 0.2;

// Where the readings of an arm's runs meet: one checkpoint of one arm.
struct Meeting {
  std::size_t arm = 0;
  double cuts = 0;
  struct Member {
    std::size_t run = 0;
    const Checkpoint* checkpoint = nullptr;
  };
  std::vector<Member> members;
};

std::vector<Meeting> meetings_of(const BluntingData& data) {
  std::map<std::pair<std::size_t, double>, std::size_t> index;
  std::vector<Meeting> meetings;
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    for (const Checkpoint& checkpoint : data.runs[r].checkpoints) {
      if (checkpoint.below_resolution) continue;
      const auto key = std::make_pair(data.runs[r].arm, checkpoint.cuts);
      if (!index.contains(key)) {
        index[key] = meetings.size();
        meetings.push_back({.arm = data.runs[r].arm, .cuts = checkpoint.cuts});
      }
      meetings[index[key]].members.push_back({.run = r, .checkpoint = &checkpoint});
    }
  }
  return meetings;
}

std::vector<std::size_t> draws_checked(const BluntingFit& fit) {
  const std::size_t total = fit.reading_scatter.size();
  const std::size_t step = std::max<std::size_t>(1, total / kDrawsChecked);
  std::vector<std::size_t> draws;
  for (std::size_t d = 0; d < total; d += step) draws.push_back(d);
  return draws;
}

// Of a checkpoint's centre about the curve, at one draw.
double variance_at(const BluntingFit& fit, const Checkpoint& checkpoint, std::size_t draw) {
  const double spot = fit.checkpoint_scatter[draw];
  const double reading = fit.reading_scatter[draw];
  return spot * spot + checkpoint.relative_variance * reading * reading;
}

double residual_at(const BluntingFit& fit,
                   std::size_t arm,
                   const Meeting::Member& member,
                   std::size_t draw) {
  const LogLogistic curve{fit.runs[member.run].log_start[draw],
                          fit.runs[member.run].log_half_keenness[draw],
                          fit.arms[arm].shape[draw]};
  return member.checkpoint->log_bluntness - log_bluntness(curve, member.checkpoint->log_cuts);
}

// What a residual counts as: itself, or less the farther out it lies where errors are robust.
double counted(double residual, double variance, bool robust) {
  if (!robust) return residual;
  const double scaled = kRobustVariance * variance;
  return robust_weight(residual * residual / scaled) * residual / kRobustVariance;
}

struct Moments {
  double sum = 0;
  double squares = 0;
  double count = 0;

  void add(double each) {
    sum += each;
    squares += each * each;
    ++count;
  }
  [[nodiscard]] double mean() const { return sum / count; }
  [[nodiscard]] double variance() const { return squares / count - mean() * mean(); }
};

// What the readings of one place show, with 1 / variance as weights w.
struct Seen {
  double log_offset = 0;
  double weight = 0;       // sum of w: the variance of the next for new readings
  double pull = 0;         // sum of w times residual
  double weight_left = 0;  // the variance of the pull, since these readings placed the curve
  double squares = 0;      // of the runs' residuals about their common mean, weighed
  double degrees = 0;      // what those come to on average where the fit's scale is right
};

struct Look {
  const BluntingFit& fit;
  std::vector<std::size_t> draws;

  [[nodiscard]] double weight_of(const Checkpoint& checkpoint) const {
    Moments precision;
    for (const std::size_t d : draws) precision.add(1 / variance_at(fit, checkpoint, d));
    return precision.mean();
  }

  [[nodiscard]] Seen at(const Meeting& meeting) const {
    std::vector<double> pull_by_draw(draws.size());
    Seen seen;
    double squares = 0;
    double known = 0;  // of each reading by itself: weight times variance of the fitted
    for (const Meeting::Member& member : meeting.members) {
      const double weight = weight_of(*member.checkpoint);
      Moments residuals;
      double pull = 0;
      for (std::size_t i = 0; i < draws.size(); ++i) {
        const double residual = residual_at(fit, meeting.arm, member, draws[i]);
        const double variance = variance_at(fit, *member.checkpoint, draws[i]);
        residuals.add(residual);
        pull += counted(residual, variance, fit.parts.robust) / variance;
        pull_by_draw[i] += weight * residual;
      }
      pull /= residuals.count;
      seen.weight += weight;
      seen.pull += pull;
      squares += pull * pull / weight;
      known += weight * residuals.variance();
      seen.log_offset += residuals.mean() / static_cast<double>(meeting.members.size());
    }
    Moments pulls;
    for (const double pull : pull_by_draw) pulls.add(pull);
    seen.weight_left = seen.weight - pulls.variance();
    seen.squares = squares - seen.pull * seen.pull / seen.weight;
    seen.degrees =
        static_cast<double>(meeting.members.size()) - 1 - (known - pulls.variance() / seen.weight);
    return seen;
  }
};

// How the runs' residuals differ from each other, as a share of the scale of the fit.
struct PureError {
  double squares = 0;
  double degrees = 0;

  void add(const Seen& seen) {
    squares += seen.squares;
    degrees += seen.degrees;
  }
  [[nodiscard]] bool is_known() const { return degrees >= kEnoughDegrees && squares > 0; }
};

double two_sided_p(const Seen& seen, const PureError& arm, const PureError& trial) {
  namespace bm = boost::math;
  if (seen.weight_left < kSmallestShareLeft * seen.weight) return 1;
  const double z = std::abs(seen.pull) / std::sqrt(seen.weight_left);
  const PureError& error = arm.is_known() ? arm : trial;
  if (!error.is_known()) return 2 * bm::cdf(bm::complement(bm::normal(), z));
  const double t = z / std::sqrt(error.squares / error.degrees);
  return 2 * bm::cdf(bm::complement(bm::students_t(error.degrees), t));
}

}  // namespace

CurveCheckResult check_curve(const BluntingData& data, const BluntingFit& fit) {
  const std::vector<Meeting> meetings = meetings_of(data);
  const Look look{.fit = fit, .draws = draws_checked(fit)};
  std::vector<Seen> seen;
  std::vector<PureError> of_arm(data.arms.size());
  PureError of_trial;
  for (const Meeting& meeting : meetings) {
    seen.push_back(look.at(meeting));
    of_arm[meeting.arm].add(seen.back());
    of_trial.add(seen.back());
  }
  CurveCheckResult result;
  const double places = static_cast<double>(meetings.size());
  for (std::size_t m = 0; m < meetings.size(); ++m) {
    const double p = two_sided_p(seen[m], of_arm[meetings[m].arm], of_trial);
    const double shared_p = std::min(1.0, p * places);
    result.smallest_p = std::min(result.smallest_p, shared_p);
    if (shared_p < kSmallestP && std::abs(seen[m].log_offset) > kSmallestOffset) {
      result.misfits.push_back({.arm = meetings[m].arm,
                                .cuts = meetings[m].cuts,
                                .log_offset = seen[m].log_offset,
                                .p = p});
    }
  }
  return result;
}

}  // namespace keenfall::blunting
