#include "planning/checkpoints.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "blunting/inference/model_spec.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>

namespace keenfall::planning {

namespace {

// By how much checkpoints grow, from the fewest readings to the most. Finer steps than the last
// hardly help: more repeats do.
constexpr std::array kStepFactors{4.0, 3.0, 2.5, 2.0, 1.7, 1.5};

// Reading may make runs scatter 15 % more: sqrt(1 + 0.568^2) = 1.15.
constexpr double kReadingPerRunScatter = 0.568;

// A checkpoint that can be counted to: whole, or of two figures.
double countable(double cuts, bool whole) {
  if (whole) return std::round(cuts);
  const double step = std::pow(10, std::floor(std::log10(cuts)) - 1);
  return std::round(cuts / step) * step;
}

// Half a step below the shortest expected half keenness, and half a step beyond the longest, with
// one more point either way; or on, until the edge is as blunt as the stop level.
std::vector<double> growing_by(double factor, const CheckpointNeeds& needs) {
  const double shortest = needs.half_keenness_cuts / needs.either_way;
  const double longest = needs.half_keenness_cuts * needs.either_way;
  const double stop = std::exp(blunting::log_cuts_to_level(
      {.log_half_keenness = std::log(needs.half_keenness_cuts), .shape = needs.shape},
      needs.stop_level));
  std::vector<double> cuts{0};
  double at = shortest / std::pow(factor, 1.5);
  int beyond = 0;  // points after the longest half keenness
  while (beyond < 2 || cuts.back() < stop) {
    double next = countable(at, needs.whole_cuts);
    // Small steps of whole cuts go one by one, as soon as there is a whole cut.
    if (needs.whole_cuts && at >= 0.5 && next <= cuts.back()) next = cuts.back() + 1;
    at *= factor;
    if (next <= cuts.back()) continue;
    cuts.push_back(next);
    if (next > longest) ++beyond;
  }
  return cuts;
}

bool is_well_read(const std::vector<double>& cuts, const CheckpointNeeds& needs) {
  return std::ranges::all_of(
      std::array{1 / needs.either_way, 1.0, needs.either_way}, [&](double lasting) {
        const double half = needs.half_keenness_cuts * lasting;
        return half_keenness_error(cuts,
                                   needs.reading,
                                   {.log_half_keenness = std::log(half), .shape = needs.shape}) <=
               kReadingPerRunScatter * needs.run_log_sd;
      });
}

std::optional<base::Problem> problem_of(const CheckpointNeeds& needs) {
  const auto refuse = [](const std::string& sentence, const char* field, const char* accepted) {
    return base::Problem{.kind = base::ProblemKind::bad_value,
                         .sentence = sentence,
                         .place = {.column = field},
                         .accepted = accepted};
  };
  const auto within = [](double number, double least, double most) {
    return number >= least && number <= most;
  };
  if (!within(needs.half_keenness_cuts, 1e-3, 1e7)) {
    return refuse("Checkpoints cannot be laid around a half keenness of " +
                      base::plain_number(needs.half_keenness_cuts) + ".",
                  "half_keenness_cuts",
                  "how many cuts an edge is expected to stand until it is half as keen: above 0");
  }
  if (!within(needs.either_way, 1, 100)) {
    return refuse("Arms cannot last " + base::plain_number(needs.either_way) +
                      " times as long as expected and as short.",
                  "either_way",
                  "a ratio from 1 to 100");
  }
  if (!within(needs.stop_level, 1.01, 100)) {
    return refuse("A run cannot stop at " + base::plain_number(needs.stop_level) +
                      " times its start reading.",
                  "stop_level",
                  "a level from 1.01 to 100, usually 2 to 4");
  }
  if (!within(needs.shape, 0.2, 2)) {
    return refuse("The shape of the curve cannot be " + base::plain_number(needs.shape) + ".",
                  "shape",
                  "0.2 to 2");
  }
  return std::nullopt;
}

}  // namespace

std::vector<double> doubling_checkpoints(double last_cuts) {
  base::require(last_cuts <= 1e9, "checkpoints end somewhere");
  std::vector<double> cuts{0, 1};
  while (cuts.back() < last_cuts) cuts.push_back(2 * cuts.back() + 1);
  return cuts;
}

std::vector<double> gritty_checkpoints() { return {0, 1, 2, 4, 6, 9, 13, 19, 28}; }

double half_keenness_error(std::span<const double> checkpoint_cuts,
                           const CheckpointReading& reading,
                           const blunting::LogLogistic& curve) {
  base::require(reading.repeats >= 1, "a checkpoint is read once or more");
  const double p = curve.shape;
  const double variance = reading.spot_log_sd * reading.spot_log_sd +
                          reading.reading_log_sd * reading.reading_log_sd / reading.repeats;
  // Information of (log b0, log tau, log p); log b = log b0 + log(1 + u), u = (x / tau)^p.
  const double shape_sd = blunting::PriorScales{}.shape_scatter;
  double bb = 0;
  double bt = 0;
  double bp = 0;
  double tt = 0;
  double tp = 0;
  double pp = 1 / (shape_sd * shape_sd);
  for (const double cuts : checkpoint_cuts) {
    const double log_x = cuts > 0 ? std::log(cuts) - curve.log_half_keenness : 0;
    const double u = cuts > 0 ? std::exp(p * log_x) : 0;
    const double by_tau = -p * u / (1 + u);
    const double by_shape = p * log_x * u / (1 + u);
    bb += 1 / variance;
    bt += by_tau / variance;
    bp += by_shape / variance;
    tt += by_tau * by_tau / variance;
    tp += by_tau * by_shape / variance;
    pp += by_shape * by_shape / variance;
  }
  if (bb == 0) return HUGE_VAL;
  // Without the start, then without the shape.
  const double tt_left = tt - bt * bt / bb;
  const double tp_left = tp - bt * bp / bb;
  const double pp_left = pp - bp * bp / bb;
  const double information = tt_left - tp_left * tp_left / pp_left;
  return information > 0 ? 1 / std::sqrt(information) : HUGE_VAL;
}

base::Result<std::vector<double>> fewest_checkpoints(const CheckpointNeeds& needs) {
  if (auto problem = problem_of(needs)) return base::failed(*std::move(problem));
  for (const double factor : kStepFactors) {
    std::vector<double> cuts = growing_by(factor, needs);
    if (is_well_read(cuts, needs)) return cuts;
  }
  return growing_by(kStepFactors.back(), needs);
}

std::string_view why_growing_steps() {
  return "Checkpoints grow by a factor: an edge loses most at first and then ever more slowly, so "
         "even steps would spend most readings where little happens.";
}

}  // namespace keenfall::planning
