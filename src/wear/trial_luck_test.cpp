#include "wear/trial_luck.h"

#include <gtest/gtest.h>

#include <functional>
#include <set>
#include <vector>

namespace keenfall::wear {
namespace {

TrialPlan plan_of_two() {
  return {.steels = {materials::find_microstructure("AISI A11").value(),
                     materials::find_microstructure("75Ni8").value()},
          .works = {work_in(known_media()[1])},
          .edges = {{.finish_name = "fine", .finish = fine_finish(), .apex_angle = {15}}}};
}

TEST(TheLuckOfATrial, IsItsOwnWhateverSettingDiffers) {
  using Change = std::function<void(TrialPlan&)>;
  const std::vector<Change> changes = {
      [](TrialPlan&) {},
      [](TrialPlan& plan) { plan.seed = {2}; },
      [](TrialPlan& plan) { plan.steels.pop_back(); },
      [](TrialPlan& plan) { std::swap(plan.steels[0], plan.steels[1]); },
      [](TrialPlan& plan) { plan.steels[0].toughness_mpa_sqrt_m += 1; },
      [](TrialPlan& plan) { plan.works[0] = work_in(known_media()[0]); },
      [](TrialPlan& plan) {
        plan.works[0].steps.push_back({.what = WetPause{.duration_hour = 8}});
      },
      [](TrialPlan& plan) { plan.edges[0].apex_angle = {20}; },
      [](TrialPlan& plan) { plan.edges[0].finish = coarse_finish(); },
      [](TrialPlan& plan) { plan.edge_length_mm = 10; },
      [](TrialPlan& plan) { plan.runs_each = 7; },
      [](TrialPlan& plan) { plan.blocks = 3; },
      [](TrialPlan& plan) { plan.repeats = 5; },
      [](TrialPlan& plan) { plan.longest_cuts = 511; },
      [](TrialPlan& plan) { plan.stop_level = 3; },
      [](TrialPlan& plan) { plan.reading = ApexReading::slice; },
      [](TrialPlan& plan) { plan.scatter.spot_log_sd = 0; },
      [](TrialPlan& plan) { plan.rules.push_reach_um = 31; }};
  std::set<std::uint64_t> seeds;
  for (const Change& change : changes) {
    TrialPlan plan = plan_of_two();
    change(plan);
    seeds.insert(luck_of(plan).number);
  }

  EXPECT_EQ(seeds.size(), changes.size());
}

TEST(TheLuckOfATrial, DoesNotHangOnItsName) {
  TrialPlan renamed = plan_of_two();
  renamed.name = "another name";

  EXPECT_EQ(luck_of(renamed), luck_of(plan_of_two()));
}

// The edges of one steel, cut beside another steel than before, are other edges.
TEST(TheLuckOfATrial, GivesAnArmOtherEdgesBesideAnotherArm) {
  TrialPlan both = plan_of_two();
  both.longest_cuts = 15;
  both.edge_length_mm = 2;
  both.truth_edges = 1;
  TrialPlan alone = both;
  alone.steels.pop_back();
  const auto first_run = [](const TrialPlan& plan) {
    const auto made = simulated_trial(plan, base::one_thread()).value();
    for (const trials::Run& run : made.trial.runs) {
      if (run.arm.blade == "AISI A11" && run.name == "1") return run.readings;
    }
    return std::vector<trials::Reading>();
  };

  EXPECT_FALSE(first_run(both).empty());
  EXPECT_NE(first_run(both), first_run(alone));
}

}  // namespace
}  // namespace keenfall::wear
