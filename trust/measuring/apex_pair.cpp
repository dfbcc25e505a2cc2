#include "trust/measuring/apex_pair.h"

#include "base/require.h"
#include "materials/microstructure.h"
#include "wear/apex_scenario.h"
#include "wear/media_presets.h"
#include "wear/simulated_trial.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <mutex>
#include <string>
#include <string_view>

namespace keenfall::trust {

namespace {

std::string_view steel_of_b(const ApexPair& pair, TrueRatio ratio) {
  return ratio == TrueRatio::one ? pair.steel : pair.other;
}

wear::AbrasiveMedium medium_called(std::string_view name) {
  const auto found = std::ranges::find(wear::known_media(), name, &wear::AbrasiveMedium::name);
  base::require(found != wear::known_media().end(), "the medium of a cell is a known one");
  return *found;
}

wear::TrialPlan plan_of(const ApexPair& pair, TrueRatio ratio, std::uint64_t seed) {
  materials::Microstructure a = materials::find_microstructure(pair.steel).value();
  materials::Microstructure b = materials::find_microstructure(steel_of_b(pair, ratio)).value();
  a.name = "A";
  b.name = "B";
  return {.steels = {a, b},
          .works = {wear::work_in(medium_called(pair.medium))},
          .edges = {{.finish_name = "fine", .finish = wear::fine_finish()}},
          .runs_each = pair.runs_each,
          .blocks = 1,
          .repeats = 3,
          .seed = {seed},
          .truth_edges = 1};
}

TrueBlade true_blade(const ApexPair& pair, std::string_view steel) {
  const wear::ApexScenario scenario{.steels = {materials::find_microstructure(steel).value()},
                                    .work = wear::work_in(medium_called(pair.medium)),
                                    .edge = {.finish = wear::fine_finish()}};
  const auto log_life = [&](double level) {
    return std::log(
        wear::median_life_cuts(scenario, 0, {.level = level, .runs = pair.truth_edges}).value());
  };
  return {.log_half_cuts = log_life(2), .log_level_cuts = log_life(kLevel)};
}

// Cut once for a steel in a medium, then remembered: it takes seconds.
TrueBlade known_blade(const ApexPair& pair, std::string_view steel) {
  static std::mutex guard;
  static std::map<std::string, TrueBlade> known;
  const std::scoped_lock lock(guard);
  const std::string name =
      std::string(pair.medium) + "," + std::string(steel) + "," + std::to_string(pair.truth_edges);
  const auto found = known.find(name);
  if (found != known.end()) return found->second;
  return known[name] = true_blade(pair, steel);
}

}  // namespace

CellTrial apex_trial(const ApexPair& pair, TrueRatio ratio, std::uint64_t seed) {
  auto made = wear::simulated_trial(plan_of(pair, ratio, seed), base::one_thread());
  const trials::ReadingSeries& series = made->trial.series.front();
  CellTrial trial{.key = {.kind = series.kind.name, .thread = series.thread},
                  .a = "A",
                  .b = "B",
                  .true_a = known_blade(pair, pair.steel),
                  .true_b = known_blade(pair, steel_of_b(pair, ratio))};
  if (ratio == TrueRatio::margin) {
    trial.margin = std::exp(std::abs(trial.true_a.log_half_cuts - trial.true_b.log_half_cuts));
  }
  trial.trial = std::move(made->trial);
  return trial;
}

}  // namespace keenfall::trust
