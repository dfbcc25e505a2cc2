#include "wear/simulated_trial.h"

#include "base/plain_number.h"
#include "numerics/random.h"
#include "wear/edge_life.h"
#include "wear/trial_luck.h"
#include "wear/trial_plan_refusals.h"
#include "wear/trial_truth.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <utility>

namespace keenfall::wear {

namespace {

using numerics::RandomStream;

// Streams of a trial: its order and its blocks, then the luck at the bench of each run. Edges draw
// from streams far beyond these.
constexpr std::uint64_t kBenchStream = 0;
constexpr std::uint64_t kFirstRunStream = 1;

std::vector<ArmPlan> arm_plans(const TrialPlan& plan) {
  std::vector<ArmPlan> arms;
  for (std::size_t work = 0; work < plan.works.size(); ++work) {
    for (std::size_t edge = 0; edge < plan.edges.size(); ++edge) {
      for (std::size_t steel = 0; steel < plan.steels.size(); ++steel) {
        const TrialEdge& start = plan.edges[edge];
        arms.push_back(
            {.arm = {.blade = plan.steels[steel].name,
                     .edge = {.bevel_angle = start.apex_angle, .finish = finish_in_words(start)},
                     .medium = {.name = plan.works[work].name},
                     .method = {.motion = trials::Motion::slice,
                                .edge_used_mm = plan.edge_length_mm}},
             .steel = steel,
             .work = work,
             .edge = edge});
      }
    }
  }
  return arms;
}

// A run before it is cut.
struct RunPlan {
  std::size_t arm = 0;
  int number = 0;  // within its arm, from 1
  int block = 0;   // from 1
  double dose_ratio = 1;
  double start_ratio = 1;
};

// Blocks one after the other, the runs of each in shuffled order (Fisher & Yates).
std::vector<RunPlan> runs_in_order(const TrialPlan& plan,
                                   const std::vector<ArmPlan>& arms,
                                   base::Seed luck) {
  RandomStream random(luck, kBenchStream);
  std::vector<RunPlan> runs;
  int numbered = 0;
  for (int block = 1; block <= plan.blocks; ++block) {
    const int until = plan.runs_each * block / plan.blocks;
    std::vector<double> block_effects;
    for (std::size_t work = 0; work < plan.works.size(); ++work) {
      block_effects.push_back(plan.scatter.block_log_sd * random.normal());
    }
    std::vector<RunPlan> here;
    for (int number = numbered + 1; number <= until; ++number) {
      for (std::size_t arm = 0; arm < arms.size(); ++arm) {
        const double severity =
            block_effects[arms[arm].work] + plan.scatter.run_log_sd * random.normal();
        here.push_back({.arm = arm,
                        .number = number,
                        .block = block,
                        .dose_ratio = std::exp(severity),
                        .start_ratio = std::exp(plan.scatter.start_log_sd * random.normal())});
      }
    }
    numbered = until;
    for (std::size_t i = here.size(); i > 1; --i) std::swap(here[i - 1], here[random.below(i)]);
    runs.insert(runs.end(), here.begin(), here.end());
  }
  return runs;
}

// As the instrument shows it: whole grams-force, tenths of a millimetre.
double as_shown(ApexReading reading, double exact) {
  const double step = reading == ApexReading::push ? 1 : 0.1;
  return std::max(step, std::round(exact / step) * step);
}

// What is read off an edge until it is blunt.
std::vector<trials::Reading> read_off(const TrialPlan& plan,
                                      const SimulatedEdge& edge,
                                      RandomStream& random) {
  std::vector<trials::Reading> readings;
  double log_start = 0;
  for (const EdgeReading& at : edge.readings) {
    const double spot =
        std::log(in_trial_unit(plan.reading, at)) + plan.scatter.spot_log_sd * random.normal();
    double log_mean = 0;
    for (int repeat = 1; repeat <= plan.repeats; ++repeat) {
      const double exact = std::exp(spot + plan.scatter.reading_log_sd * random.normal());
      trials::Reading reading{.cuts = static_cast<double>(at.cuts),
                              .reading = as_shown(plan.reading, exact)};
      if (plan.repeats > 1) reading.repeat = repeat;
      log_mean += std::log(reading.reading) / plan.repeats;
      readings.push_back(std::move(reading));
    }
    if (at.cuts == 0) log_start = log_mean;
    if (log_mean - log_start >= std::log(plan.stop_level)) break;
  }
  return readings;
}

trials::ReadingSeries series_of(ApexReading reading) {
  const bool push = reading == ApexReading::push;
  const trials::ReadingKind& kind = kind_read(reading);
  return {.kind = kind, .unit = kind.unit, .thread = push ? "simulated thread" : "simulated cord"};
}

trials::Run cut_run(const TrialPlan& plan,
                    const std::vector<ArmPlan>& arms,
                    const RunPlan& run,
                    const LifeOfEdge& luck) {
  const ArmPlan& arm = arms[run.arm];
  const ApexSimulation simulation =
      simulation_of(plan,
                    arm,
                    {.dose_ratio = run.dose_ratio,
                     .start_ratio = run.start_ratio,
                     .read_at_cuts = doubling_checkpoints(plan.longest_cuts)});
  const SimulatedEdge edge = lived(simulation,
                                   stretches_of(simulation.schedule),
                                   {.seed = luck.seed, .run = (luck.run + 1) << 33U});
  RandomStream random(luck.seed, kFirstRunStream + luck.run);
  trials::Run made{.name = std::to_string(run.number),
                   .arm = arm.arm,
                   .block = std::to_string(run.block),
                   .order = static_cast<int>(luck.run) + 1,
                   .readings = read_off(plan, edge, random),
                   .notes = {std::string(trials::kSimulatedNote)}};
  if (made.readings.back().cuts == static_cast<double>(plan.longest_cuts)) {
    made.notes.push_back("stopped at the cap of " + std::to_string(plan.longest_cuts) + " cuts");
  }
  return made;
}

trials::Trial uncut_trial(const TrialPlan& plan) {
  trials::Trial trial{.name = plan.name, .series = {series_of(plan.reading)}};
  for (const materials::Microstructure& steel : plan.steels) {
    trial.blades.push_back({.name = steel.name,
                            .steel = steel.name,
                            .hardness = trials::Hardness{.reading = steel.hardness_hrc}});
  }
  return trial;
}

base::Problem stopped_by_a_person() {
  return {.kind = base::ProblemKind::interrupted,
          .sentence = "the simulation was stopped before all edges were cut"};
}

}  // namespace

std::string finish_in_words(const TrialEdge& edge) {
  const EdgeFinish& finish = edge.finish;
  return edge.finish_name + (finish.tooth_depth_um > 0
                                 ? ", teeth " + base::plain_number(finish.tooth_depth_um) + " µm"
                                 : ", land " + base::plain_number(finish.land_width_um) + " µm");
}

std::vector<long> doubling_checkpoints(long longest) {
  std::vector<long> cuts{0};
  while (cuts.back() < longest) cuts.push_back(std::min(longest, 2 * cuts.back() + 1));
  return cuts;
}

base::Result<SimulatedTrial> simulated_trial(const TrialPlan& plan,
                                             const base::Executor& executor,
                                             const base::ProgressReport& progress) {
  const auto problems = problems_of(plan);
  if (!problems.empty()) return base::failed(problems.front());
  const std::vector<ArmPlan> arms = arm_plans(plan);
  const base::Seed luck = luck_of(plan);
  const std::vector<RunPlan> runs = runs_in_order(plan, arms, luck);
  SimulatedTrial made{.trial = uncut_trial(plan), .level = kind_read(plan.reading).default_level};
  made.trial.runs.resize(runs.size());
  std::atomic<std::size_t> done = 0;
  std::atomic<bool> stopped = false;
  std::vector<base::Task> tasks;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    tasks.push_back([&, i] {
      if (stopped) return;
      made.trial.runs[i] = cut_run(plan, arms, runs[i], {.seed = luck, .run = i});
      const double fraction = static_cast<double>(++done) / static_cast<double>(runs.size());
      if (!progress({.fraction_done = fraction, .stage = "cutting simulated edges"})) {
        stopped = true;
      }
    });
  }
  executor(tasks);
  if (stopped && done < runs.size()) return base::failed(stopped_by_a_person());
  auto truth = truth_of(plan, arms, executor, progress);
  if (!truth) return base::failed(truth.error());
  made.arms = std::move(*truth);
  made.ratios = ratios_of(made.arms);
  return made;
}

}  // namespace keenfall::wear
