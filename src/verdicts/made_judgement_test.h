// For tests: a judgement made by hand, no engine behind it. Three blades in two media; the numbers
// are invented. Tests change the one thing they are about.
#pragma once

#include "verdicts/judgement.h"
#include "verdicts/made_across_test.h"

#include <array>
#include <cmath>
#include <string>
#include <utility>

namespace keenfall::verdicts::testing {

inline numerics::Interval around(double median, double log_half_width) {
  return {.median = median,
          .lo90 = median * std::exp(-0.84 * log_half_width),
          .hi90 = median * std::exp(0.84 * log_half_width),
          .lo95 = median * std::exp(-log_half_width),
          .hi95 = median * std::exp(log_half_width)};
}

inline verdicts::ArmResult made_arm(const std::string& blade,
                                    const std::string& medium,
                                    double half_keenness_cuts) {
  verdicts::ArmResult arm{
      .arm = {.blade = blade,
              .edge = {.bevel_angle = trials::PerSideAngle{17}, .finish = "9 µm diamond"},
              .medium = {.name = medium},
              .method = {.motion = trials::Motion::slice,
                         .cut_length_mm = 100,
                         .edge_used_mm = 40}},
      .runs = 6,
      .longest_run_cuts = 4 * half_keenness_cuts,
      .start_reading = around(104, 0.05),
      .half_keenness =
          verdicts::CutsToLevel{.cuts = around(half_keenness_cuts, 0.2), .runs_that_reached = 6},
      .stop_level = verdicts::CutsToLevel{.cuts = around(half_keenness_cuts * 5.9, 0.3),
                                          .runs_that_reached = 4},
      .run_scatter_log_sd = around(0.18, 0.3),
      .shape = around(0.62, 0.1)};
  const int points = static_cast<int>(std::ceil(std::log(8 * half_keenness_cuts) / std::log(1.5)));
  for (int point = 0; point < points; ++point) {
    const double cuts = std::pow(1.5, point);
    const double reading = 104 * (1 + std::pow(cuts / half_keenness_cuts, 0.62));
    arm.curve.push_back({.cuts = cuts,
                         .reading = around(reading, 0.08),
                         .beyond_what_was_cut = cuts > arm.longest_run_cuts});
  }
  return arm;
}

inline verdicts::Comparison made_comparison(
    std::size_t a, std::size_t b, double ratio, double log_half_width, verdicts::Verdict verdict) {
  const numerics::Interval single = around(ratio, log_half_width);
  const numerics::Interval wide = around(ratio, 1.15 * log_half_width);
  return {
      .a = a,
      .b = b,
      .ratio = single,
      .simultaneous = {wide.lo90, wide.hi90, wide.lo95, wide.hi95},
      .family_size = 3,
      .ratio_by_level = {{.level = 2, .ratio = single}, {.level = 4, .ratio = single}},
      .probability_longer = 0.97,
      .probability_worth_having = 0.6,
      .verdict = verdict,
      .single_verdict = verdict,
      .also_differs = {
          {.what = "bevel angle", .matching = verdicts::Matching::matched, .a = "17°", .b = "17°"},
          {.what = "hardness", .matching = verdicts::Matching::not_recorded}}};
}

inline std::vector<verdicts::RunResult> made_runs(const std::vector<verdicts::ArmResult>& arms) {
  std::vector<verdicts::RunResult> runs;
  for (std::size_t arm = 0; arm < arms.size(); ++arm) {
    runs.push_back({.arm = arm,
                    .run = arm,
                    .name = "1",
                    .block = "1",
                    .order = 3,
                    .checkpoints = 7,
                    .readings_used = 49,
                    .last_cuts = arms[arm].longest_run_cuts,
                    .start_reading = around(104, 0.05),
                    .half_keenness_cuts = arms[arm].half_keenness->cuts,
                    .compared_cuts = arms[arm].half_keenness->cuts});
  }
  return runs;
}

// A, B and C on new and on uplifted matting.
inline verdicts::Judgement made_judgement() {
  using verdicts::Verdict;
  verdicts::Judgement judgement{
      .trial = "matting bench",
      .kind = *trials::find_reading_kind("thread_push"),
      .unit = "gf",
      .arms = {made_arm("A", "new matting", 34),
               made_arm("B", "new matting", 48),
               made_arm("C", "new matting", 108),
               made_arm("A", "uplifted matting", 8.4),
               made_arm("B", "uplifted matting", 8.8),
               made_arm("C", "uplifted matting", 9.2)},
      .comparisons = {made_comparison(2, 0, 3.1, 0.3, Verdict::longer_and_worth_having),
                      made_comparison(2, 1, 2.2, 0.3, Verdict::longer_and_worth_having),
                      made_comparison(1, 0, 1.4, 0.25, Verdict::longer),
                      made_comparison(5, 3, 1.1, 0.15, Verdict::practically_the_same),
                      made_comparison(5, 4, 1.05, 0.15, Verdict::practically_the_same),
                      made_comparison(4, 3, 1.2, 0.45, Verdict::not_settled)},
      .media = made_media(around(1, 0.3)),
      .covariates = {{.covariate = verdicts::Covariate::start_reading, .ratio = around(0.97, 0.1)},
                     {.covariate = verdicts::Covariate::order_of_cutting,
                      .ratio = around(1.05, 0.1)}},
      .fit = {.model = "default",
              .model_parts = {"robust readings", "blocks"},
              .usable = true,
              .r_hat_max = 1.002,
              .ess_bulk_min = 1210,
              .ess_tail_min = 980,
              .draws = 4000,
              .seed = 1,
              .cpu_seconds = 1.75}};
  judgement.comparisons.front().run_by_run =
      verdicts::RunByRun{.runs_a = 6,
                         .runs_b = 6,
                         .ratio = 3.05,
                         .p = 2.0 / 924,
                         .smallest_possible_p = 2.0 / 924,
                         .by_blocks = verdicts::SignedRanks{
                             .blocks = 6, .p = 1.0 / 32, .smallest_possible_p = 1.0 / 32}};
  judgement.comparisons.back().further_runs = verdicts::FurtherRuns{.runs_each = 8};
  judgement.runs = made_runs(judgement.arms);
  for (verdicts::MediumOfTable& medium : judgement.media->media) {
    for (const std::size_t arm : medium.arms) {
      medium.lasting.push_back(*judgement.arms[arm].half_keenness);
    }
  }
  return judgement;
}

}  // namespace keenfall::verdicts::testing
