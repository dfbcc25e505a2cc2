#include "wear/trial_truth.h"

#include "numerics/summaries.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace keenfall::wear {

namespace {

constexpr long kFirstCuts = 64;
constexpr long kLongerTimes = 8;
constexpr long kLongestFactor = 100;
constexpr std::uint64_t kTruthSeedOffset = 0x74727574680000;  // apart from the seeds of the runs

struct LifeAndStart {
  std::optional<double> cuts;
  double start = 0;
};

base::Result<LifeAndStart> median_life(const TrialPlan& plan,
                                       const ArmPlan& arm,
                                       const base::Executor& executor,
                                       const base::ProgressReport& progress) {
  const long longest = kLongestFactor * plan.longest_cuts;
  for (long cuts = std::min(kFirstCuts, longest);; cuts = std::min(longest, cuts * kLongerTimes)) {
    const auto edges =
        simulate(simulation_of(plan, arm, {.read_at_cuts = rising_cuts(cuts)}),
                 {.runs = plan.truth_edges, .seed = {plan.seed.number + kTruthSeedOffset}},
                 executor,
                 progress);
    if (!edges) return base::failed(edges.error());
    std::vector<double> lives;
    for (const SimulatedEdge& edge : *edges) {
      lives.push_back(cuts_to_level(edge, plan.reading, kind_read(plan.reading).default_level)
                          .value_or(std::numeric_limits<double>::infinity()));
    }
    std::ranges::sort(lives);
    const double start = in_trial_unit(plan.reading, edges->front().readings.front());
    if (lives[lives.size() / 2] < std::numeric_limits<double>::infinity()) {
      return LifeAndStart{.cuts = numerics::quantile_of_sorted(lives, 0.5), .start = start};
    }
    if (cuts == longest) return LifeAndStart{.cuts = std::nullopt, .start = start};
  }
}

}  // namespace

ApexSimulation simulation_of(const TrialPlan& plan, const ArmPlan& arm, const EdgeToCut& edge) {
  const materials::Microstructure& steel = plan.steels.at(arm.steel);
  const TrialEdge& start = plan.edges.at(arm.edge);
  ApexSimulation simulation{
      .edge = {.finish = start.finish,
               .apex_angle = start.apex_angle,
               .length_mm = plan.edge_length_mm},
      .steel = apex_steel(steel, plan.flaw_constant),
      .schedule = schedule_of(plan.works.at(arm.work),
                              steel,
                              {.cuts = edge.read_at_cuts.back(), .dose_ratio = edge.dose_ratio}),
      .damage = plan.damage,
      .reading = plan.rules,
      .read_at_cuts = edge.read_at_cuts};
  simulation.edge.finish.land_width_um *= edge.start_ratio;
  return simulation;
}

const trials::ReadingKind& kind_read(ApexReading reading) {
  return *trials::find_reading_kind(reading == ApexReading::push ? "thread_push" : "cord_draw");
}

double in_trial_unit(ApexReading reading, const EdgeReading& at) {
  return reading == ApexReading::push ? kThreadPushGfPerUm * at.push_um
                                      : kCordDrawMmPerUm * at.slice_um;
}

base::Result<std::vector<ArmTruth>> truth_of(const TrialPlan& plan,
                                             const std::vector<ArmPlan>& arms,
                                             const base::Executor& executor,
                                             const base::ProgressReport& progress) {
  std::vector<ArmTruth> truth;
  for (const ArmPlan& arm : arms) {
    const double done = static_cast<double>(truth.size());
    const auto life = median_life(plan, arm, executor, [&](const base::Progress& part) {
      return progress(
          {.fraction_done = (done + part.fraction_done) / static_cast<double>(arms.size()),
           .stage = "cutting edges for the truth"});
    });
    if (!life) return base::failed(life.error());
    truth.push_back({.arm = arm.arm, .start_reading = life->start, .life_cuts = life->cuts});
  }
  return truth;
}

std::vector<RatioTruth> ratios_of(const std::vector<ArmTruth>& arms) {
  std::vector<RatioTruth> ratios;
  for (std::size_t i = 0; i < arms.size(); ++i) {
    for (std::size_t j = i + 1; j < arms.size(); ++j) {
      const bool comparable = arms[i].arm.medium == arms[j].arm.medium &&
                              arms[i].arm.edge.finish == arms[j].arm.edge.finish &&
                              arms[i].life_cuts && arms[j].life_cuts;
      if (!comparable) continue;
      RatioTruth ratio{.a = i, .b = j};
      if (*arms[i].life_cuts < *arms[j].life_cuts) std::swap(ratio.a, ratio.b);
      ratio.ratio = *arms[ratio.a].life_cuts / *arms[ratio.b].life_cuts;
      ratios.push_back(ratio);
    }
  }
  return ratios;
}

}  // namespace keenfall::wear
