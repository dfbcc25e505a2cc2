#include "blunting/inference/curve_check.h"

#include "blunting/curves/log_logistic.h"
#include "numerics/random.h"
#include "numerics/summaries.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace keenfall::blunting {

namespace {

constexpr std::size_t kDrawsChecked = 400;
constexpr double kSmallestOffset = 0.05;  // of the log reading: less would not change an answer
constexpr double kSmallestP = 0.01;

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

// Scale of a checkpoint's centre about the curve, at one draw.
double scale_at(const BluntingFit& fit, const Checkpoint& checkpoint, std::size_t draw) {
  const double spot = fit.checkpoint_scatter[draw];
  const double reading = fit.reading_scatter[draw];
  return std::sqrt(spot * spot + checkpoint.relative_variance * reading * reading);
}

// What a new reading would add, in units of the scale: Student's t with 4 degrees of freedom at
// 0.831, or a standard normal.
double new_error(const BluntingFit& fit, numerics::RandomStream& random) {
  return fit.parts.robust ? 0.831 * random.student_t(4) : random.normal();
}

// Far residuals count as three scales, so that one slip is not mistaken for a wrong curve.
double bounded(double standardised) { return std::clamp(standardised, -3.0, 3.0); }

CurveMisfit check(const Meeting& meeting, const BluntingFit& fit, numerics::RandomStream& random) {
  const std::size_t total = fit.reading_scatter.size();
  const std::size_t step = std::max<std::size_t>(1, total / kDrawsChecked);
  std::vector<double> excess;  // of the seen over the newly made, per draw
  double offset = 0;
  for (std::size_t d = 0; d < total; d += step) {
    double seen = 0;
    double made = 0;
    for (const Meeting::Member& member : meeting.members) {
      const LogLogistic curve{fit.runs[member.run].log_start[d],
                              fit.runs[member.run].log_half_keenness[d],
                              fit.arms[meeting.arm].shape[d]};
      const double residual =
          member.checkpoint->log_bluntness - log_bluntness(curve, member.checkpoint->log_cuts);
      seen += bounded(residual / scale_at(fit, *member.checkpoint, d));
      made += bounded(new_error(fit, random));
      offset += residual / static_cast<double>(meeting.members.size());
    }
    excess.push_back(seen - made);
  }
  // A normal tail, since so small a probability cannot be counted in some hundred draws.
  const double z = std::abs(numerics::mean_of(excess)) / std::sqrt(numerics::variance_of(excess));
  return {.arm = meeting.arm,
          .cuts = meeting.cuts,
          .log_offset = offset / static_cast<double>(excess.size()),
          .p = std::erfc(z / std::numbers::sqrt2)};
}

}  // namespace

CurveCheckResult check_curve(const BluntingData& data, const BluntingFit& fit, base::Seed seed) {
  constexpr std::uint64_t kCheckStream = 2000;
  numerics::RandomStream random(seed, kCheckStream);
  CurveCheckResult result;
  const std::vector<Meeting> meetings = meetings_of(data);
  const double places = static_cast<double>(meetings.size());
  for (const Meeting& meeting : meetings) {
    const CurveMisfit found = check(meeting, fit, random);
    const double shared_p = std::min(1.0, found.p * places);
    result.smallest_p = std::min(result.smallest_p, shared_p);
    if (shared_p < kSmallestP && std::abs(found.log_offset) > kSmallestOffset) {
      result.misfits.push_back(found);
    }
  }
  return result;
}

}  // namespace keenfall::blunting
