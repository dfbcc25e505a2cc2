#include "planning/own_repeatability.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "planning/checkpoints.h"

#include <cmath>

namespace keenfall::planning {

namespace {

constexpr double kCapCuts = 127;

// A log sd as people say it: "18 %".
std::string percent(double log_sd) {
  return base::plain_number(std::round(100 * std::expm1(log_sd))) + " %";
}

}  // namespace

trials::Plan own_repeatability_plan(const OwnRepeatability& with) {
  trials::Plan plan{.cuttings = {{.medium = with.medium,
                                  .lot = with.lot,
                                  .method = with.method,
                                  .checkpoint_cuts = doubling_checkpoints(kCapCuts)}},
                    .arms = {{.blade = with.blade, .edge = with.edge}},
                    .reading = with.reading,
                    .stop = {.level = 4},
                    .runs_each = kOwnRuns};
  for (int run = 1; run <= kOwnRuns; ++run) {
    plan.runs.push_back({.arm = 0, .block = run, .order = run});
  }
  return plan;
}

trials::Claim own_repeatability_claim(const OwnRepeatability& with) {
  const double careful = usual_run_scatter(Care::careful_freehand).most;
  return {.words = "My runs of " + with.blade + " in " + with.medium.name +
                   " scatter no more than careful work does: by " + percent(careful) + " or less."};
}

base::Result<OwnScatter> own_scatter(const verdicts::Judgement& judgement, std::size_t arm) {
  base::require(arm < judgement.arms.size(), "an arm of the judgement");
  const verdicts::ArmResult& result = judgement.arms[arm];
  const auto refuse = [](const std::string& sentence, const std::string& accepted) {
    return base::failed(
        {.kind = base::ProblemKind::unsuitable_data, .sentence = sentence, .accepted = accepted});
  };
  if (!judgement.fit.usable) {
    return refuse("The fit of this trial is not usable, so how much runs scatter is not known.",
                  "a trial whose fit is usable");
  }
  if (result.runs < 2) {
    return refuse("One run of " + result.arm.blade + " cannot show how much runs scatter.",
                  "two runs or more, better three");
  }
  if (!result.half_keenness || !result.shape || !result.start_reading) {
    return refuse("The edges of " + result.arm.blade + " were only tested, not read.",
                  "runs with readings at checkpoints");
  }
  const numerics::Interval& scatter = result.run_scatter_log_sd;
  return OwnScatter{.run_log_sd = scatter.median,
                    .lo95 = scatter.lo95,
                    .hi95 = scatter.hi95,
                    .runs = result.runs,
                    .expected = {.half_keenness_cuts = result.half_keenness->cuts.median,
                                 .shape = result.shape->median,
                                 .run_log_sd = scatter.median},
                    .start_reading = result.start_reading->median};
}

ExpectedCutting to_be_assumed(const OwnScatter& scatter) {
  const auto two_figures = [](double number) { return std::stod(base::with_figures(number, 2)); };
  ExpectedCutting expected = scatter.expected;
  expected.half_keenness_cuts = two_figures(expected.half_keenness_cuts);
  expected.run_log_sd = two_figures(expected.run_log_sd);
  return expected;
}

std::string percent_of(const OwnScatter& scatter) { return percent(scatter.run_log_sd); }

std::string interval_of(const OwnScatter& scatter) {
  return percent(scatter.lo95) + " to " + percent(scatter.hi95);
}

std::string in_words(const OwnScatter& scatter, const std::string& blade) {
  return "Your runs of " + blade + " scatter by " + percent_of(scatter) + ", a log sd of " +
         base::with_figures(scatter.run_log_sd, 2) + " (95 % interval " + interval_of(scatter) +
         "), told by " + std::to_string(scatter.runs) +
         " runs. Plans may assume this from now on; a few runs tell it only roughly.";
}

}  // namespace keenfall::planning
