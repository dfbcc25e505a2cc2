#include "planning/imagined_trial.h"

#include "base/require.h"
#include "blunting/simulated_run.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <utility>

namespace keenfall::planning {

namespace {

using numerics::RandomStream;
using trials::Plan;

// Makes the runs of one cutting, one after the other, from one stream of chance.
class ImaginedCutting {
 public:
  ImaginedCutting(const Imagined& imagined, RandomStream& random)
      : imagined_(imagined),
        random_(random),
        is_keener_higher_(imagined.kind.keener_when == trials::KeenerWhen::higher) {}

  trials::Trial made() {
    const Plan& plan = imagined_.plan;
    for (const trials::PlannedRun& run : plan.runs) {
      if (plan.arms[run.arm].cutting == imagined_.cutting) add(run);
    }
    return std::move(trial_);
  }

 private:
  void add(const trials::PlannedRun& planned) {
    const Plan& plan = imagined_.plan;
    const trials::PlannedArm& arm = plan.arms[planned.arm];
    const trials::PlannedCutting& cutting = plan.cuttings[imagined_.cutting];
    remember(arm.blade, planned.specimen);
    trials::Run run{.name = std::to_string(planned.block),
                    .arm = {arm.blade, arm.edge, cutting.medium, cutting.method},
                    .specimen = planned.specimen,
                    .block = std::to_string(planned.block),
                    .order = planned.order};
    run.readings = read(curve_of(planned), cutting.checkpoint_cuts);
    trial_.runs.push_back(std::move(run));
  }

  void remember(const std::string& blade, const std::string& specimen) {
    auto found = std::ranges::find(trial_.blades, blade, &trials::Blade::name);
    if (found == trial_.blades.end()) {
      trial_.blades.push_back({.name = blade});
      found = trial_.blades.end() - 1;
    }
    const bool is_new =
        std::ranges::count(found->specimens, specimen, &trials::Specimen::name) == 0;
    if (!specimen.empty() && is_new) found->specimens.push_back({.name = specimen});
  }

  // The same for every run of the block, or with the piece.
  template <class Key>
  double shared(std::map<Key, double>& effects, const Key& key, double log_sd) {
    const auto found = effects.find(key);
    if (found != effects.end()) return found->second;
    return effects[key] = log_sd * random_.normal();
  }

  blunting::LogLogistic curve_of(const trials::PlannedRun& planned) {
    const Assumptions& assumed = imagined_.assumptions;
    blunting::LogLogistic curve = expected_curve(imagined_.plan, assumed, planned.arm);
    if (is_keener_higher_) curve.log_start = -curve.log_start;  // bluntness is 1/reading
    curve.log_start += assumed.start_log_sd * random_.normal();
    curve.log_half_keenness += assumed.cuttings[imagined_.cutting].run_log_sd * random_.normal() +
                               shared(blocks_, planned.block, assumed.block_log_sd);
    if (!planned.specimen.empty()) {
      const std::pair piece(imagined_.plan.arms[planned.arm].blade, planned.specimen);
      curve.log_half_keenness += shared(pieces_, piece, assumed.specimen_log_sd);
    }
    return curve;
  }

  std::vector<trials::Reading> read(const blunting::LogLogistic& curve,
                                    const std::vector<double>& checkpoints) {
    const Assumptions& assumed = imagined_.assumptions;
    std::vector<trials::Reading> readings = blunting::simulated_readings(
        curve,
        {.checkpoints = checkpoints, .repeats = imagined_.plan.reading.repeats},
        {.reading_scatter = assumed.reading_log_sd, .checkpoint_scatter = assumed.spot_log_sd},
        random_);
    stop(readings);
    if (is_keener_higher_) {
      for (trials::Reading& reading : readings) reading.reading = 1 / reading.reading;
    }
    return readings;
  }

  // Leaves out what is read after the checkpoint at which the run stops.
  void stop(std::vector<trials::Reading>& readings) const {
    const auto repeats = static_cast<std::size_t>(imagined_.plan.reading.repeats);
    const auto mean_at = [&](std::size_t first) {
      double mean = 0;
      for (std::size_t i = first; i < first + repeats; ++i) mean += std::log(readings[i].reading);
      return mean / static_cast<double>(repeats);
    };
    const trials::StopRule& rule = imagined_.plan.stop;
    std::optional<double> log_stop;
    if (rule.level) log_stop = mean_at(0) + std::log(*rule.level);
    if (rule.reading) log_stop = (is_keener_higher_ ? -1 : 1) * std::log(*rule.reading);
    if (!log_stop) return;
    for (std::size_t first = repeats; first + repeats < readings.size(); first += repeats) {
      if (mean_at(first) < *log_stop) continue;
      readings.resize(first + repeats);
      return;
    }
  }

  const Imagined& imagined_;
  RandomStream& random_;
  bool is_keener_higher_;
  std::map<int, double> blocks_;
  std::map<std::pair<std::string, std::string>, double> pieces_;
  trials::Trial trial_{.series = {{.kind = imagined_.kind,
                                   .unit = imagined_.kind.unit,
                                   .thread = imagined_.plan.reading.thread}}};
};

}  // namespace

std::vector<trials::Arm> arms_of_cutting(const Plan& plan, std::size_t cutting) {
  std::vector<trials::Arm> arms;
  for (const trials::PlannedArm& arm : plan.arms) {
    if (arm.cutting != cutting) continue;
    arms.push_back(
        {arm.blade, arm.edge, plan.cuttings[cutting].medium, plan.cuttings[cutting].method});
  }
  return arms;
}

trials::Trial imagined_trial(const Imagined& imagined, RandomStream& random) {
  base::require(imagined.cutting < imagined.plan.cuttings.size() &&
                    imagined.cutting < imagined.assumptions.cuttings.size(),
                "a cutting of the plan, of which something is assumed");
  base::require(!imagined.plan.cuttings[imagined.cutting].checkpoint_cuts.empty() &&
                    imagined.plan.reading.repeats >= 1,
                "a run is read somewhere");
  return ImaginedCutting(imagined, random).made();
}

trials::Trial first_blocks(const trials::Trial& trial, int blocks) {
  trials::Trial first = trial;
  std::erase_if(first.runs,
                [blocks](const trials::Run& run) { return std::stoi(run.block) > blocks; });
  return first;
}

}  // namespace keenfall::planning
