#include "verdicts/described_curves.h"

#include "base/plain_number.h"
#include "blunting/curves/log_logistic.h"
#include "blunting/inference/curve_check.h"
#include "numerics/summaries.h"
#include "verdicts/curve_cuts.h"
#include "verdicts/lasting.h"
#include "verdicts/what_was_seen.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <utility>

namespace keenfall::verdicts {

namespace {

using blunting::BluntingData;
using blunting::BluntingFit;
using blunting::Draws;

numerics::Interval reading_interval(const BluntingData& data, Draws log_bluntness) {
  for (double& draw : log_bluntness) draw = log_reading_of(data, draw);
  return numerics::exp_of(numerics::interval_of(std::move(log_bluntness)));
}

std::vector<CurvePoint> curve_of(const BluntingData& data,
                                 const BluntingFit& fit,
                                 std::size_t arm,
                                 const std::vector<double>& at_cuts) {
  const double longest = longest_run_cuts(data, arm);
  const blunting::ArmDraws& draws = fit.arms[arm];
  std::vector<CurvePoint> points;
  for (const double cuts : at_cuts) {
    Draws log_bluntness;
    for (std::size_t d = 0; d < draws.shape.size(); ++d) {
      log_bluntness.push_back(blunting::log_bluntness(
          {draws.log_start[d], draws.log_half_keenness[d], draws.shape[d]}, std::log(cuts)));
    }
    points.push_back({.cuts = cuts,
                      .reading = reading_interval(data, std::move(log_bluntness)),
                      .beyond_what_was_cut = cuts > longest});
  }
  return points;
}

bool never_blunts(const blunting::RunData& run) {
  const blunting::Checkpoint& first = run.checkpoints.front();
  const blunting::Checkpoint& last = run.checkpoints.back();
  return !first.below_resolution && !last.below_resolution &&
         last.log_bluntness <= first.log_bluntness;
}

// The first cuts after the start at which any run of the medium was read.
double first_cuts(const BluntingData& data, std::size_t medium) {
  double first = HUGE_VAL;
  for (const auto& run : data.runs) {
    if (data.medium_of_arm[run.arm] != medium) continue;
    for (const auto& checkpoint : run.checkpoints) {
      if (checkpoint.cuts > 0) first = std::min(first, checkpoint.cuts);
    }
  }
  return first;
}

void add_curves(std::vector<ArmResult>& results, const BluntingData& data, const BluntingFit& fit) {
  for (std::size_t medium = 0; medium < data.media.size(); ++medium) {
    std::vector<std::size_t> arms;
    std::vector<double> longest;
    for (std::size_t a = 0; a < data.arms.size(); ++a) {
      if (data.medium_of_arm[a] != medium) continue;
      arms.push_back(a);
      longest.push_back(longest_run_cuts(data, a));
    }
    const auto cuts = curve_cuts(first_cuts(data, medium), longest);
    for (std::size_t i = 0; i < arms.size(); ++i) {
      results[arms[i]].curve = curve_of(data, fit, arms[i], cuts[i]);
    }
  }
}

ArmResult arm_result(const BluntingData& data, const BluntingFit& fit, std::size_t arm) {
  ArmResult result{.arm = data.arms[arm], .longest_run_cuts = longest_run_cuts(data, arm)};
  std::set<std::size_t> pieces;
  for (const auto& run : data.runs) {
    if (run.arm != arm) continue;
    ++result.runs;
    if (never_blunts(run)) ++result.runs_that_never_blunt;
    if (run.specimen) pieces.insert(*run.specimen);
  }
  result.specimens = std::max(1, static_cast<int>(pieces.size()));
  result.start_reading = reading_interval(data, fit.arms[arm].log_start);
  result.half_keenness = cuts_until(data, fit, arm, {.what = ComparedAt::half_keenness});
  result.run_scatter_log_sd = numerics::interval_of(fit.run_scatter_of(data.medium_of_arm[arm]));
  result.shape = numerics::interval_of(fit.arms[arm].shape);
  return result;
}

CurveCheck curve_check_of(const BluntingData& data,
                          const BluntingFit& fit,
                          const trials::Counted& counted) {
  const blunting::CurveCheckResult found = blunting::check_curve(data, fit);
  CurveCheck check{.passed = found.misfits.empty(), .smallest_p = found.smallest_p};
  for (const blunting::CurveMisfit& misfit : found.misfits) {
    const double percent = std::round(100 * std::abs(std::expm1(misfit.log_offset)));
    const trials::Arm& arm = data.arms[misfit.arm];
    check.where.push_back(arm.blade + " on " + arm.medium.name + ": at " +
                          so_many(base::plain_number(misfit.cuts), counted) +
                          " the edges are about " + base::plain_number(percent) + " % " +
                          (misfit.log_offset > 0 ? "blunter" : "keener") + " than the curve.");
  }
  return check;
}

std::vector<CovariateEffect> covariate_effects(const BluntingFit& fit) {
  std::vector<CovariateEffect> effects;
  if (fit.parts.start_effect) {
    numerics::Interval effect = numerics::interval_of(fit.start_effect);
    const double blunter = std::log(1.1);
    for (double* bound : {&effect.median, &effect.lo90, &effect.hi90, &effect.lo95, &effect.hi95}) {
      *bound *= blunter;
    }
    effects.push_back({.covariate = Covariate::start_reading, .ratio = numerics::exp_of(effect)});
  }
  if (fit.parts.order_drift) {
    effects.push_back({.covariate = Covariate::order_of_cutting,
                       .ratio = numerics::exp_of(numerics::interval_of(fit.order_drift))});
  }
  return effects;
}

}  // namespace

DescribedCurves describe_curves(const trials::Trial& trial,
                                const BluntingData& data,
                                const BluntingFit& fit) {
  DescribedCurves described{.runs = run_results(trial, data, fit)};
  for (std::size_t a = 0; a < data.arms.size(); ++a) {
    described.arms.push_back(arm_result(data, fit, a));
  }
  add_curves(described.arms, data, fit);
  if (fit.diagnostics.usable) {
    described.covariates = covariate_effects(fit);
    described.curve_check = curve_check_of(data, fit, trial.counted);
  }
  return described;
}

}  // namespace keenfall::verdicts
