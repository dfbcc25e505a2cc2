#include "verdicts/reported_run.h"

#include "base/require.h"
#include "blunting/inference/run_readings.h"
#include "materials/units.h"

#include <algorithm>

namespace keenfall::verdicts {

namespace {

// Is the series among what the judgement is about? A pass ladder is judged whatever its thread.
bool is_judged_by(const trials::ReadingSeries& series, const Judgement& judgement) {
  if (series.kind.name != judgement.kind.name) return false;
  return judgement.kind.use == trials::ReadingUse::evidence || series.thread == judgement.thread;
}

std::vector<std::size_t> series_read(const trials::Trial& trial,
                                     const trials::Run& run,
                                     const Judgement& judgement) {
  std::vector<std::size_t> read;
  for (std::size_t s = 0; s < trial.series.size(); ++s) {
    const bool any = std::ranges::count(run.readings, s, &trials::Reading::series) > 0;
    if (any && is_judged_by(trial.series[s], judgement)) read.push_back(s);
  }
  return read;
}

// Told in the judgement's unit.
std::vector<blunting::CheckpointReading> checkpoints_told(const trials::Trial& trial,
                                                          const trials::Run& run,
                                                          const Judgement& judgement) {
  const blunting::SeriesKey key{.kind = judgement.kind.name, .thread = judgement.thread};
  auto checkpoints = blunting::checkpoint_readings(trial, run, key);
  const std::string& recorded_in = blunting::first_series(trial, key).unit;
  if (recorded_in == judgement.unit) return checkpoints;
  const auto one = materials::convert(1, recorded_in, judgement.unit);
  base::require(one.has_value(), "a judgement is told in a unit that its readings convert into");
  for (blunting::CheckpointReading& checkpoint : checkpoints) checkpoint.reading *= *one;
  return checkpoints;
}

std::optional<double> half_keenness_over_arm(const RunResult& run, const Judgement& judgement) {
  const ArmResult& arm = judgement.arms.at(run.arm);
  if (!run.half_keenness_cuts || !arm.half_keenness) return std::nullopt;
  return run.half_keenness_cuts->median / arm.half_keenness->cuts.median;
}

}  // namespace

std::vector<ReportedRun> reported_runs(const trials::Trial& trial, const Judgement& judgement) {
  std::vector<ReportedRun> reported;
  for (const RunResult& judged : judgement.runs) {
    const trials::Run& run = trial.runs.at(judged.run);
    ReportedRun shown{.run = judged.run,
                      .series = series_read(trial, run, judgement),
                      .half_keenness_over_arm = half_keenness_over_arm(judged, judgement)};
    if (judgement.kind.use == trials::ReadingUse::curve) {
      shown.checkpoints = checkpoints_told(trial, run, judgement);
    }
    reported.push_back(std::move(shown));
  }
  return reported;
}

}  // namespace keenfall::verdicts
