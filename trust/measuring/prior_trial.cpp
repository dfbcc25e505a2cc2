#include "trust/measuring/prior_trial.h"

#include "base/require.h"
#include "blunting/curves/log_logistic.h"
#include "numerics/random.h"
#include "trust/measuring/text_hash.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::trust {

namespace {

using blunting::ParameterValues;
using numerics::RandomStream;

constexpr std::array kCheckpoints{0.0, 2.0, 5.0, 12.0, 30.0, 70.0, 150.0};
constexpr double kSmallestPlainShape = 0.2;  // plain's shapes are cut off there
constexpr double kLargestPlainShape = 2;
// Of the standard error (docs/methods/blunting-model.md); not taken from the engine, so that a slip
// there shows.
constexpr double kRobustScale = 0.831;
constexpr double kRobustFreedom = 4;

// Who was cut how, without readings: enough to know which parts the model has.
trials::Trial unread_trial(const CalibrationDesign& design, RandomStream& random) {
  trials::Trial trial{
      .blades = {{.name = "A"}, {.name = "B"}},
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  for (int medium = 0; medium < design.media; ++medium) {
    for (const char* blade : {"A", "B"}) {
      for (int i = 0; i < design.runs_each; ++i) {
        trials::Run run{
            .name = std::to_string(i + 1),
            .arm = {.blade = blade, .medium = {.name = medium == 0 ? "manila" : "sisal"}}};
        if (design.blocks > 0) run.block = std::to_string(i % design.blocks + 1);
        if (design.specimens_each > 0) {
          run.specimen = std::to_string(i % design.specimens_each + 1);
        }
        trial.runs.push_back(std::move(run));
      }
    }
  }
  std::vector<int> order;
  for (std::size_t i = 0; i < trial.runs.size(); ++i) order.push_back(static_cast<int>(i) + 1);
  for (std::size_t i = order.size(); i > 1; --i) std::swap(order[i - 1], order[random.below(i)]);
  for (std::size_t i = 0; i < order.size(); ++i) trial.runs[i].order = order[i];
  return trial;
}

// Readings that stand in until the true ones are drawn: the parts of a model hang on how many there
// are, not on what they say.
void put_readings(trials::Trial& trial, int repeats, RandomStream& random) {
  for (trials::Run& run : trial.runs) {
    for (const double cuts : kCheckpoints) {
      for (int repeat = 1; repeat <= repeats; ++repeat) {
        run.readings.push_back(
            {.cuts = cuts, .reading = std::exp(random.normal()), .repeat = repeat});
      }
    }
  }
}

double half_normal(double scale, RandomStream& random) { return std::abs(scale * random.normal()); }

double log_normal(double median, double log_sd, RandomStream& random) {
  return median * std::exp(log_sd * random.normal());
}

void draw_scales(const CalibrationDesign& design,
                 const blunting::ParameterLayout& layout,
                 ParameterValues& values,
                 RandomStream& random) {
  const blunting::PriorScales& priors = design.spec.priors;
  for (std::size_t s = 0; s < layout.scatters; ++s) {
    values.start_scatter.push_back(half_normal(priors.start_scatter, random));
    values.run_scatter.push_back(half_normal(priors.run_scatter, random));
  }
  values.reading_scatter = half_normal(priors.reading_scatter, random);
  const double log_sd = priors.log_scatter_sd;
  if (layout.has_checkpoint_scatter) {
    values.checkpoint_scatter = log_normal(priors.checkpoint_scatter, log_sd, random);
  }
  if (layout.has_shape_level) {
    values.shape_scatter = log_normal(priors.shape_scatter, log_sd, random);
  }
  if (layout.block_count > 0) {
    values.block_scatter = log_normal(priors.block_scatter, log_sd, random);
  }
  if (layout.specimen_count > 0) {
    values.specimen_scatter = half_normal(priors.specimen_scatter, random);
  }
  if (layout.has_start_effect) values.start_effect = priors.start_effect * random.normal();
  if (layout.has_order_drift) values.order_drift = priors.order_drift * random.normal();
}

double plain_shape(const blunting::PriorScales& priors, RandomStream& random) {
  double shape = 0;
  while (shape < kSmallestPlainShape || shape > kLargestPlainShape) {
    shape = log_normal(priors.shape_centre, priors.log_shape_sd, random);
  }
  return shape;
}

void draw_levels(const CalibrationDesign& design,
                 const blunting::BluntingData& data,
                 const blunting::ParameterLayout& layout,
                 ParameterValues& values,
                 RandomStream& random) {
  const blunting::PriorScales& priors = design.spec.priors;
  const blunting::PriorCentres& centres = *design.spec.centres;
  for (std::size_t m = 0; m < layout.media && layout.has_shape_level; ++m) {
    values.shape_mean.push_back(std::log(priors.shape_centre) +
                                priors.log_shape_sd * random.normal());
  }
  for (std::size_t a = 0; a < layout.arms; ++a) {
    values.start_mean.push_back(centres.log_start + priors.log_start_sd * random.normal());
    values.half_mean.push_back(centres.log_half_keenness +
                               priors.log_half_keenness_sd * random.normal());
    values.shape.push_back(layout.has_shape_level
                               ? std::exp(values.shape_mean[data.medium_of_arm[a]] +
                                          values.shape_scatter * random.normal())
                               : plain_shape(priors, random));
  }
  for (std::size_t b = 0; b < layout.block_count; ++b) {
    values.block_effect.push_back(values.block_scatter * random.normal());
  }
  for (std::size_t s = 0; s < layout.specimen_count; ++s) {
    values.specimen_effect.push_back(values.specimen_scatter * random.normal());
  }
}

void draw_runs(const blunting::BluntingData& data,
               const blunting::ParameterLayout& layout,
               ParameterValues& values,
               RandomStream& random) {
  for (const blunting::RunData& run : data.runs) {
    const std::size_t scatter = layout.scatters > 1 ? run.medium : 0;
    const double off = values.start_scatter[scatter] * random.normal();
    values.run_start.push_back(values.start_mean[run.arm] + off);
    double centre = values.half_mean[run.arm] + values.start_effect * off +
                    values.order_drift * run.order_place;
    if (layout.block_count > 0 && run.block) centre += values.block_effect[*run.block];
    if (layout.specimen_count > 0 && run.specimen) {
      centre += values.specimen_effect[*run.specimen];
    }
    values.run_half.push_back(centre + values.run_scatter[scatter] * random.normal());
  }
}

void read_true_readings(PriorTrial& made, const CalibrationDesign& design, RandomStream& random) {
  const bool robust = design.spec.errors == blunting::ReadingErrors::robust;
  for (std::size_t r = 0; r < made.data.runs.size(); ++r) {
    const blunting::RunData& run = made.data.runs[r];
    const blunting::LogLogistic curve{.log_start = made.truth.run_start[r],
                                      .log_half_keenness = made.truth.run_half[r],
                                      .shape = made.truth.shape[run.arm]};
    double spot = 0;
    for (trials::Reading& reading : made.trial.runs[run.run].readings) {
      if (reading.repeat == 1) spot = made.truth.checkpoint_scatter * random.normal();
      const double error =
          robust ? kRobustScale * random.student_t(kRobustFreedom) : random.normal();
      reading.reading = std::exp(log_bluntness(curve, std::log(reading.cuts)) + spot +
                                 made.truth.reading_scatter * error);
    }
  }
}

PriorTrial drawn_trial(const CalibrationDesign& design, RandomStream& random) {
  PriorTrial made{.trial = unread_trial(design, random)};
  put_readings(made.trial, design.repeats, random);
  const blunting::SeriesKey key{.kind = "thread_push", .thread = ""};
  made.data = blunting::prepare(made.trial, key, design.spec.errors).value();
  const auto layout = layout_of(parts_for(design.spec, made.data), made.data);
  draw_scales(design, layout, made.truth, random);
  draw_levels(design, made.data, layout, made.truth, random);
  draw_runs(made.data, layout, made.truth, random);
  read_true_readings(made, design, random);
  made.data = blunting::prepare(made.trial, key, design.spec.errors).value();
  return made;
}

// Whether every edge blunts within the cuts it is read at. By the readings alone: then the truth is
// still a draw from its posterior, so that ranks stay uniform.
bool is_seen_at_a_bench(const trials::Trial& trial) {
  static constexpr double kFewCuts = 2;
  constexpr double kRiseOfAll = 1.5;
  constexpr double kRiseOfFewCuts = 2;
  return std::ranges::all_of(trial.runs, [](const trials::Run& run) {
    const double first = run.readings.front().reading;
    const auto early = std::ranges::find(run.readings, kFewCuts, &trials::Reading::cuts);
    return early->reading < kRiseOfFewCuts * first &&
           run.readings.back().reading > kRiseOfAll * first;
  });
}

}  // namespace

PriorTrial prior_trial(const CalibrationDesign& design, std::uint64_t number) {
  base::require(design.spec.centres.has_value(), "calibration needs fixed prior centres");
  base::require(design.repeats == 1 || design.spec.errors == blunting::ReadingErrors::gaussian,
                "robust readings are condensed, so repeats of them are not drawn");
  RandomStream random({text_hash(design.name) + number}, 0);
  PriorTrial made = drawn_trial(design, random);
  while (!is_seen_at_a_bench(made.trial)) made = drawn_trial(design, random);
  return made;
}

}  // namespace keenfall::trust
