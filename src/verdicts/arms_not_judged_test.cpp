#include "verdicts/arms_not_judged.h"

#include "verdicts/judge_lives.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::verdicts {
namespace {

using ::testing::ElementsAre;

// One run of each blade: A is judged by its thread push readings; B was read by another kind, C was
// tested only, of D nothing was recorded, and the thread push readings of E are voided.
trials::Trial of_five_blades() {
  trials::Trial trial{.series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"},
                                 {.kind = *trials::find_reading_kind("rope_press"), .unit = "N"}}};
  for (const char* blade : {"A", "B", "C", "D", "E"}) {
    trial.blades.push_back({.name = blade});
    trial.runs.push_back({.name = "1", .arm = {.blade = blade, .medium = {.name = "sisal"}}});
  }
  trial.runs[0].readings = {{.series = 0, .reading = 104}};
  trial.runs[1].readings = {{.series = 1, .reading = 12}};
  trial.runs[2].edge_lives = {{.lasted_cuts = 20, .failed_by_cuts = 30}};
  trial.runs[4].readings = {{.series = 0, .reading = 104}};
  trial.runs[4].voided_reason = "burr left";
  return trial;
}

// With `judged` the only arm that could be used.
Judgement set_aside_but_for(std::size_t judged, const std::string& kind_name) {
  const trials::Trial trial = of_five_blades();
  Judgement judgement{.arms = {{.arm = trial.runs[judged].arm}}};
  judgement.kind.name = kind_name;
  for (std::size_t r = 0; r < trial.runs.size(); ++r) {
    judgement.runs.push_back({.arm = 0, .run = r});
    if (r == judged) continue;
    judgement.runs.back().arm = judgement.arms.size();  // of none of them
    judgement.runs.back().not_used_because = "nothing to use";
  }
  set_aside_arms_not_judged(judgement, trial);
  return judgement;
}

std::vector<std::string> blades_set_aside(const Judgement& judgement) {
  const trials::Trial trial = of_five_blades();
  std::vector<std::string> blades;
  for (const RunResult& run : judgement.runs_of_arms_not_judged) {
    blades.push_back(trial.runs[run.run].arm.blade);
  }
  return blades;
}

TEST(ArmsNotJudged, ShowTheirRunsWhereTheirKindIsJudgedOrNothingWasRecorded) {
  EXPECT_THAT(blades_set_aside(set_aside_but_for(0, "thread_push")), ElementsAre("D", "E"));
  EXPECT_THAT(blades_set_aside(set_aside_but_for(1, "rope_press")), ElementsAre("D"));
}

TEST(ArmsNotJudged, ShowRunsThatWereOnlyReadNowhereAmongTests) {
  EXPECT_THAT(blades_set_aside(set_aside_but_for(2, std::string(kEdgeLives))), ElementsAre("D"));
}

TEST(ArmsNotJudged, AreAllNamedWithTheReason) {
  const Judgement found = set_aside_but_for(0, "thread_push");

  ASSERT_EQ(found.cannot_say.size(), 4U);
  EXPECT_EQ(found.cannot_say[1],
            "Nothing is said of C on sisal, since none of its runs could be used here: nothing to "
            "use (1 run).");
  EXPECT_EQ(found.runs.size(), 1U);
}

}  // namespace
}  // namespace keenfall::verdicts
