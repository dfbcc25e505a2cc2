#include "blunting/inference/blunting_data.h"

#include "base/require.h"
#include "blunting/inference/condensed_repeats.h"
#include "blunting/inference/run_groups.h"
#include "blunting/inference/run_readings.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace keenfall::blunting {

namespace {

using trials::Reading;
using trials::Run;
using trials::Trial;

// Why the run cannot inform a curve; empty when it can.
std::string unusable_because(const Run& run,
                             const RunReadings& readings,
                             const Trial& trial,
                             const SeriesKey& key) {
  if (run.voided_reason) return "voided: " + *run.voided_reason;
  if (readings.log_bluntness.empty() && readings.below_resolution.empty()) {
    const bool any = std::ranges::any_of(run.readings, [&](const Reading& reading) {
      return belongs(trial.series.at(reading.series), key);
    });
    return any ? "every reading is struck out" : "no readings of this kind";
  }
  if (readings.log_bluntness.empty()) return "every reading is zero";
  std::size_t checkpoints = readings.log_bluntness.size();
  for (const auto& zero : readings.below_resolution) {
    if (!readings.log_bluntness.contains(zero.first)) ++checkpoints;
  }
  if (checkpoints < 2) return "one checkpoint only, which says nothing about blunting";
  return {};
}

template <class T>
std::size_t index_in(std::vector<T>& values, const T& value) {
  const auto found = std::ranges::find(values, value);
  if (found != values.end()) return static_cast<std::size_t>(found - values.begin());
  values.push_back(value);
  return values.size() - 1;
}

// Condenses the repeats of all runs together, since their scatter is pooled.
class CheckpointBuilder {
 public:
  void add(std::size_t run, const RunReadings& readings, double log_resolution) {
    for (const auto& checkpoint : readings.log_bluntness) {
      groups_.push_back(checkpoint.second);
      owners_.push_back({.run = run, .cuts = checkpoint.first});
    }
    for (const auto& zero : readings.below_resolution) {
      zeros_.push_back(
          {.run = run, .cuts = zero.first, .count = zero.second, .bound = log_resolution});
    }
  }

  void finish(BluntingData& data, ReadingErrors errors) const {
    const CondensedRepeats condensed =
        errors == ReadingErrors::robust ? condense_robustly(groups_) : condense_exactly(groups_);
    data.repeat_degrees_of_freedom = condensed.degrees_of_freedom;
    data.repeat_sum_of_squares = condensed.sum_of_squares;
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      data.runs[owners_[g].run].checkpoints.push_back(
          {.cuts = owners_[g].cuts,
           .log_cuts = std::log(owners_[g].cuts),
           .log_bluntness = condensed.checkpoints[g].centre,
           .relative_variance = condensed.checkpoints[g].relative_variance,
           .readings = static_cast<int>(groups_[g].size())});
    }
    for (const Owner& zero : zeros_) {
      data.runs[zero.run].checkpoints.push_back({.cuts = zero.cuts,
                                                 .log_cuts = std::log(zero.cuts),
                                                 .log_bluntness = zero.bound,
                                                 .below_resolution = true,
                                                 .readings = zero.count});
    }
    for (RunData& run : data.runs) std::ranges::stable_sort(run.checkpoints, {}, &Checkpoint::cuts);
  }

 private:
  struct Owner {
    std::size_t run = 0;
    double cuts = 0;
    int count = 0;
    double bound = 0;
  };
  std::vector<std::vector<double>> groups_;
  std::vector<Owner> owners_;
  std::vector<Owner> zeros_;
};

// The plain means over readings: log start readings, and log cuts of readings after the start. A
// table without readings at zero cuts lends the first checkpoint of each run instead.
PriorCentres centres_of(const std::vector<RunReadings>& runs) {
  double starts = 0;
  double start_count = 0;
  double firsts = 0;
  double first_count = 0;
  double cuts = 0;
  double cut_count = 0;
  for (const RunReadings& run : runs) {
    for (const auto& checkpoint : run.log_bluntness) {
      for (const double y : checkpoint.second) {
        if (checkpoint.first == 0) starts += y, ++start_count;
        if (checkpoint.first == run.log_bluntness.begin()->first) firsts += y, ++first_count;
        if (checkpoint.first > 0) cuts += std::log(checkpoint.first), ++cut_count;
      }
    }
  }
  return {.log_start = start_count > 0 ? starts / start_count : firsts / first_count,
          .log_half_keenness = cut_count > 0 ? cuts / cut_count : 0};
}

void take_groups(BluntingData& data, const Trial& trial) {
  std::vector<std::size_t> used;
  for (const RunData& run : data.runs) used.push_back(run.run);
  RunGroups groups = group_runs(trial, used);
  for (std::size_t r = 0; r < used.size(); ++r) {
    data.runs[r].arm = groups.runs[r].arm;
    data.runs[r].medium = groups.runs[r].medium;
    data.runs[r].block = groups.runs[r].block;
    data.runs[r].specimen = groups.runs[r].specimen;
  }
  data.arms = std::move(groups.arms);
  data.medium_of_arm = std::move(groups.medium_of_arm);
  data.media = std::move(groups.media);
  data.block_count = groups.block_count;
  data.specimen_count = groups.specimen_count;
}

// The place of each run between the first and the last one cut; where one is unknown, none counts.
void place_in_order(BluntingData& data, const Trial& trial) {
  double first = HUGE_VAL;
  double last = -HUGE_VAL;
  for (const RunData& run : data.runs) {
    const std::optional<int>& order = trial.runs[run.run].order;
    if (!order) return;
    first = std::min(first, static_cast<double>(*order));
    last = std::max(last, static_cast<double>(*order));
  }
  if (!(first < last)) return;
  data.has_order = true;
  for (RunData& run : data.runs) {
    run.order_place = (*trial.runs[run.run].order - first) / (last - first) - 0.5;
  }
}

// Does any checkpoint of the run differ from its first?
bool has_changed(const RunData& run) {
  return std::ranges::any_of(run.checkpoints, [&](const Checkpoint& checkpoint) {
    return checkpoint.log_bluntness != run.checkpoints.front().log_bluntness;
  });
}

}  // namespace

std::vector<SeriesKey> fits_of(const Trial& trial) {
  std::vector<SeriesKey> keys;
  std::vector<long> counts;
  std::vector<std::size_t> key_of_series;
  for (const auto& series : trial.series) {
    key_of_series.push_back(index_in(keys, SeriesKey{series.kind.name, series.thread}));
  }
  counts.resize(keys.size());
  for (const Run& run : trial.runs) {
    for (const Reading& reading : run.readings) ++counts.at(key_of_series.at(reading.series));
  }
  std::vector<std::size_t> order;
  for (std::size_t k = 0; k < keys.size(); ++k) {
    const bool for_curves = first_series(trial, keys[k]).kind.use == trials::ReadingUse::curve;
    if (for_curves && counts[k] > 0) order.push_back(k);
  }
  std::ranges::stable_sort(order, [&counts](auto a, auto b) { return counts[a] > counts[b]; });
  std::vector<SeriesKey> sorted;
  for (const std::size_t k : order) sorted.push_back(keys[k]);
  return sorted;
}

base::Result<BluntingData> prepare(const Trial& trial, const SeriesKey& key, ReadingErrors errors) {
  const trials::ReadingSeries& series = first_series(trial, key);
  base::require(series.kind.use == trials::ReadingUse::curve, "the kind must be one for curves");
  BluntingData data{.kind = series.kind, .unit = series.unit, .thread = series.thread};
  if (data.kind.resolution) data.kind.resolution = resolution_of(series);
  const double log_resolution = log_bluntness_of(data.kind, resolution_of(series));

  CheckpointBuilder builder;
  std::vector<RunReadings> used;
  for (std::size_t r = 0; r < trial.runs.size(); ++r) {
    const Run& run = trial.runs[r];
    const RunReadings readings = readings_of(run, trial, key);
    const std::string because = unusable_because(run, readings, trial, key);
    if (!because.empty()) {
      data.set_aside.push_back({.run = r, .because = because});
      continue;
    }
    data.runs.push_back({.run = r});
    builder.add(data.runs.size() - 1, readings, log_resolution);
    used.push_back(readings);
  }
  if (data.runs.empty()) {
    return base::failed(
        {.kind = base::ProblemKind::unsuitable_data,
         .sentence = "No run can be judged: every run is voided, struck out, or has "
                     "fewer than two checkpoints of " +
                     series.kind.words + ".",
         .accepted =
             "at least one run with readings at two different numbers of " + trial.counted.many});
  }
  take_groups(data, trial);
  builder.finish(data, errors);
  if (std::ranges::none_of(data.runs, [](const RunData& run) { return has_changed(run); })) {
    return base::failed({.kind = base::ProblemKind::unsuitable_data,
                         .sentence = "No edge was seen to blunt: in every run the " +
                                     series.kind.words +
                                     " is the same throughout, to the last digit, "
                                     "so nothing can be said of how long any of them lasts.",
                         .accepted = "runs that go on until readings change, or an instrument with "
                                     "finer steps"});
  }
  data.data_centres = centres_of(used);
  place_in_order(data, trial);
  return data;
}

double log_reading_of(const BluntingData& data, double log_bluntness) {
  return data.higher_is_keener() ? -log_bluntness : log_bluntness;
}

}  // namespace keenfall::blunting
