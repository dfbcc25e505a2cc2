#include "blunting/curves/wear_and_hits_fit.h"

#include "base/plain_number.h"
#include "numerics/least_squares.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::blunting {

namespace {

constexpr std::size_t kFewestPoints = 5;
// What holds a parameter: this sd in logs, beside points taken to lie 1 % from the curve.
constexpr double kHeldLogSd = 2;
constexpr double kPointLogSd = 0.01;

std::optional<base::Problem> refusal(std::span<const CurvePoint> points) {
  const auto refused = [](std::string sentence, std::string accepted) {
    return base::Problem{.kind = base::ProblemKind::unsuitable_data,
                         .sentence = std::move(sentence),
                         .accepted = std::move(accepted)};
  };
  if (points.size() < kFewestPoints) {
    return refused("A curve of wear and hits needs five points; there are " +
                       std::to_string(points.size()) + ".",
                   "five or more checkpoints");
  }
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (!(points[i].bluntness > 0)) {
      return refused("The reading at " + base::plain_number(points[i].cuts) +
                         " cuts is not above 0, so it has no logarithm.",
                     "readings above 0");
    }
    if (points[i].cuts < 0 || (i > 0 && !(points[i].cuts > points[i - 1].cuts))) {
      return refused("The cuts of a curve must rise from 0 on; " +
                         base::plain_number(points[i].cuts) + " does not.",
                     "each checkpoint once, in order");
    }
  }
  return std::nullopt;
}

// Logs of start, slope, saturation and, where it is sought, wear scale.
struct Sought {
  std::optional<KnownWear> wear;

  [[nodiscard]] std::size_t count() const { return wear ? 3 : 4; }

  [[nodiscard]] WearAndHits curve(std::span<const double> logs) const {
    return {.wear_scale_cuts = wear ? wear->scale_cuts : std::optional(std::exp(logs[3])),
            .hit_slope_per_cut = std::exp(logs[1]),
            .hit_saturation_per_cut = std::exp(logs[2])};
  }
};

// Derivatives of log b / b0 by the logs of slope, saturation and wear scale.
struct LogSlopes {
  double by_slope = 0;
  double by_saturation = 0;
  double by_wear_scale = 0;
};

LogSlopes log_slopes(const WearAndHits& curve, double cuts) {
  const double level = bluntness(curve, cuts);
  const double saturation = curve.hit_saturation_per_cut;
  const double hits = curve.hit_slope_per_cut / saturation * -std::expm1(-saturation * cuts);
  const double fresh = curve.hit_slope_per_cut * cuts * std::exp(-saturation * cuts);
  const double worn = curve.wear_scale_cuts ? cuts / *curve.wear_scale_cuts : 0;
  return {.by_slope = hits / level,
          .by_saturation = (fresh - hits) / level,
          .by_wear_scale = -0.5 * worn / std::sqrt(1 + worn) / level};
}

std::vector<double> first_guess(std::span<const CurvePoint> points, const Sought& sought) {
  const double start = points.front().bluntness;
  const double reach = points.back().cuts;
  const double rise = std::max(points.back().bluntness / start - 1, 0.01);
  std::vector<double> logs{std::log(start), std::log(rise / (2 * reach)), std::log(0.5 / reach)};
  if (!sought.wear) {
    logs.push_back(std::log(reach / ((1 + rise / 2) * (1 + rise / 2) - 1)));
  }
  return logs;
}

}  // namespace

base::Result<WearAndHitsFit> fit_wear_and_hits(std::span<const CurvePoint> points,
                                               const std::optional<KnownWear>& wear) {
  if (auto problem = refusal(points)) return base::failed(std::move(*problem));
  const Sought sought{wear};
  const std::vector<double> guess = first_guess(points, sought);
  const std::size_t held = sought.count() - 1;
  const auto residuals =
      [&](std::span<const double> logs, std::span<double> out, std::span<double> jacobian) {
        const WearAndHits curve = sought.curve(logs);
        std::ranges::fill(jacobian, 0.0);
        for (std::size_t i = 0; i < points.size(); ++i) {
          const double cuts = points[i].cuts;
          out[i] = (logs[0] + std::log(bluntness(curve, cuts) / points[i].bluntness)) / kPointLogSd;
          if (jacobian.empty()) continue;
          const LogSlopes slopes = log_slopes(curve, cuts);
          double* row = &jacobian[i * sought.count()];
          row[0] = 1 / kPointLogSd;
          row[1] = slopes.by_slope / kPointLogSd;
          row[2] = slopes.by_saturation / kPointLogSd;
          if (!sought.wear) row[3] = slopes.by_wear_scale / kPointLogSd;
        }
        for (std::size_t k = 1; k <= held; ++k) {
          const std::size_t i = points.size() + k - 1;
          out[i] = (logs[k] - guess[k]) / kHeldLogSd;
          if (!jacobian.empty()) jacobian[i * sought.count() + k] = 1 / kHeldLogSd;
        }
      };
  const numerics::LeastSquaresFit fit =
      numerics::fit_least_squares(residuals, points.size() + held, guess);
  WearAndHitsFit found{.curve = sought.curve(fit.parameters),
                       .start = std::exp(fit.parameters[0]),
                       .wear_was_known = wear.has_value(),
                       .converged = fit.converged};
  double squares = 0;
  for (const CurvePoint& point : points) {
    const double off = std::log(found.start * bluntness(found.curve, point.cuts) / point.bluntness);
    squares += off * off;
  }
  found.root_mean_square_misfit = std::sqrt(squares / static_cast<double>(points.size()));
  return found;
}

}  // namespace keenfall::blunting
