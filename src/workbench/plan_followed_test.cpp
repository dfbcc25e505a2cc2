#include "workbench/plan_followed.h"

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

namespace keenfall::workbench {
namespace {

using Sentences = std::vector<std::string>;

// Two blades in felt, two runs each, read at 0, 5 and 10 cuts, in the order A B B A.
notebook::KeptPlan a_sealed_plan() {
  notebook::KeptPlan kept{.claims = {{.words = "A outlasts B", .worth_it_margin = 1.25}},
                          .sealed_at_utc = "2026-11-27T07:00:00Z",
                          .sha256 = "ab12"};
  kept.plan.cuttings = {{.medium = {.name = "felt"}, .checkpoint_cuts = {0, 5, 10}}};
  kept.plan.arms = {{.blade = "A", .edge = {.bevel_angle = trials::PerSideAngle{17}}},
                    {.blade = "B"}};
  kept.plan.reading.repeats = 2;
  kept.plan.runs_each = 2;
  kept.plan.runs = {{.arm = 0, .block = 1, .order = 1},
                    {.arm = 1, .block = 1, .order = 2},
                    {.arm = 1, .block = 2, .order = 3},
                    {.arm = 0, .block = 2, .order = 4}};
  return kept;
}

trials::Run a_run(const std::string& blade, const std::string& name, int order) {
  trials::Run run{
      .name = name, .arm = {.blade = blade, .medium = {.name = "felt"}}, .order = order};
  for (const double cuts : {0.0, 5.0, 10.0}) {
    run.readings.push_back({.cuts = cuts, .reading = 100 + cuts});
    run.readings.push_back({.cuts = cuts, .reading = 104 + cuts});
  }
  return run;
}

trials::Trial as_it_was_planned() {
  return {.name = "felt",
          .blades = {{.name = "A"}, {.name = "B"}},
          .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}},
          .runs = {a_run("A", "1", 1), a_run("B", "1", 2), a_run("B", "2", 3), a_run("A", "2", 4)}};
}

template <class Change>
Sentences deviations_with(Change change) {
  trials::Trial done = as_it_was_planned();
  change(done);
  return deviations_from(a_sealed_plan(), done);
}

TEST(APlanFollowed, HasNoDeviations) {
  EXPECT_EQ(deviations_with([](auto&) {}), Sentences());
}

TEST(APlanFollowed, AsksNothingOfWhatIsNotRecorded) {
  const auto found = deviations_with([](trials::Trial& done) {
    for (trials::Run& run : done.runs) run.order.reset();
  });

  EXPECT_EQ(found, Sentences());
}

TEST(APlanFollowed, ThatIsADraftBindsNobody) {
  notebook::KeptPlan draft = a_sealed_plan();
  draft.sealed_at_utc.reset();

  EXPECT_EQ(deviations_from(draft, {.name = "felt"}), Sentences());
  EXPECT_EQ(planned_and_done(draft, as_it_was_planned(), {}),
            Sentences{"Its claim and plan are a draft that was never sealed."});
  EXPECT_EQ(as_planned({}, draft).worth_it_margin, 1.5);
}

TEST(APlanFollowed, SaysThatItWasStoppedEarlyIsNoDeviation) {
  const auto found = deviations_with([](trials::Trial& done) {
    done.runs[0].readings.resize(4);  // blunt at 5 cuts
  });

  EXPECT_EQ(found, Sentences());
}

TEST(PlanDeviations, NameAnArmThatWasNotPlanned) {
  const auto found = deviations_with([](trials::Trial& done) {
    done.runs.push_back(a_run("C", "1", 5));
    done.runs.back().order.reset();
  });

  EXPECT_EQ(found, Sentences{"Not planned: C on felt, 1 run."});
}

TEST(PlanDeviations, TellAnotherEdgeFromThePlannedOne) {
  const auto found = deviations_with([](trials::Trial& done) {
    for (trials::Run& run : done.runs) {
      if (run.arm.blade == "A") run.arm.edge.bevel_angle = trials::PerSideAngle{20};
    }
  });

  EXPECT_EQ(found,
            (Sentences{"Not planned: A (20° per side) on felt, 2 runs.",
                       "Of A (17° per side) on felt 2 runs were planned and none counts."}));
}

TEST(PlanDeviations, TellLengthsOfAnEdgeInTheUnitsAskedFor) {
  trials::Trial done = as_it_was_planned();
  done.runs.push_back(a_run("C", "1", 5));
  done.runs.back().order.reset();
  done.runs.back().arm.edge.thickness_behind_edge_mm = 0.38;

  EXPECT_EQ(deviations_from(a_sealed_plan(), done, {.length = "in"}),
            Sentences{"Not planned: C (0.015 in behind the edge) on felt, 1 run."});
}

TEST(PlanDeviations, NameRunsThatAreMissingVoidedOrMore) {
  EXPECT_EQ(deviations_with([](trials::Trial& done) { done.runs.pop_back(); }),
            Sentences{"Of A (17° per side) on felt 2 runs were planned and 1 counts."});
  EXPECT_EQ(deviations_with([](trials::Trial& done) { done.runs[1].voided_reason = "burr"; }),
            Sentences{"Of B on felt 2 runs were planned and 1 counts, besides 1 voided one."});
  EXPECT_EQ(deviations_with([](trials::Trial& done) {
              done.runs.push_back(a_run("B", "3", 0));
              done.runs.back().order.reset();
            }),
            Sentences{"Of B on felt 2 runs were planned and 3 count."});
}

TEST(PlanDeviations, NameOtherCheckpoints) {
  const auto found = deviations_with([](trials::Trial& done) {
    done.runs[1].readings[2].cuts = 7;
    done.runs[1].readings[3].cuts = 7;
    done.runs[2].readings.erase(done.runs[2].readings.begin() + 2,
                                done.runs[2].readings.begin() + 4);
  });

  EXPECT_EQ(found,
            (Sentences{"1 of 4 runs was read at other cuts than planned: run 1 of B on felt.",
                       "In 1 of 4 runs nothing was read at a planned checkpoint, and something at "
                       "a later one: run 2 of B on felt."}));
}

TEST(PlanDeviations, NameFewerReadingsThanPlanned) {
  const auto found = deviations_with([](trials::Trial& done) {
    done.runs[3].readings.pop_back();
    done.runs[1].readings[0].struck_reason = "slipped";
  });

  EXPECT_EQ(
      found,
      Sentences{"In 1 of 4 runs fewer readings are recorded at a checkpoint than the 2 planned: "
                "run 2 of A on felt."});
}

TEST(PlanDeviations, NameAnotherOrder) {
  const auto found = deviations_with(
      [](trials::Trial& done) { std::swap(done.runs[0].order, done.runs[1].order); });

  EXPECT_EQ(found,
            Sentences{"2 of 4 runs were cut at another place in the order than planned: run 1 of A "
                      "on felt is the first of them."});
}

TEST(PlanDeviations, NameAnotherKindOfReading) {
  const auto found = deviations_with(
      [](trials::Trial& done) { done.series[0].kind = *trials::find_reading_kind("card_bite"); });

  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].find("Planned was a thread push reading; what was read is a "), 0U);
}

TEST(PlanDeviations, NameASealingAfterTheFirstRuns) {
  notebook::KeptPlan late = a_sealed_plan();
  late.runs_read_before = 3;

  EXPECT_EQ(deviations_from(late, as_it_was_planned()),
            Sentences{"The plan was sealed when 3 runs had been read already."});
}

TEST(AJudging, TakesMarginAndLooksFromASealedPlanUnlessOthersAreAsked) {
  notebook::KeptPlan plan = a_sealed_plan();
  plan.plan.looks = {2, 4};
  plan.plan.stop.level = 4;

  const JudgeOptions left_open = as_planned({}, plan);
  const JudgeOptions asked = as_planned({.worth_it_margin = 2, .looks = {2}}, plan);
  const JudgeOptions asked_for_the_usual = as_planned({.worth_it_is_asked = true}, plan);

  EXPECT_EQ(left_open.worth_it_margin, 1.25);
  EXPECT_EQ(left_open.looks, (std::vector<int>{2, 4}));
  EXPECT_FALSE(left_open.stop_level);
  EXPECT_EQ(asked.worth_it_margin, 2);
  EXPECT_EQ(asked.looks, std::vector<int>{2});
  EXPECT_EQ(asked_for_the_usual.worth_it_margin, 1.5);
}

TEST(AJudging, TakesNoLooksFromAPlanThatNoJudgingCanAllowFor) {
  for (const std::vector<int>& looks :
       std::vector<std::vector<int>>{{1, 2}, {3, 3}, {2, 1001}, {6, 3}}) {
    notebook::KeptPlan plan = a_sealed_plan();
    plan.plan.looks = looks;

    const JudgeOptions options = as_planned({}, plan);

    EXPECT_TRUE(options.looks.empty());
    EXPECT_NE(planned_and_done(plan, as_it_was_planned(), options).back().find("Looks asked for"),
              std::string::npos);
  }
}

TEST(WhatWasPlannedAndDone, IsToldInAFewSentences) {
  const notebook::KeptPlan plan = a_sealed_plan();
  const Sentences before{"Claimed: \"A outlasts B\"; worth it from 1.25 times.",
                         "Claim and plan were sealed at 2026-11-27T07:00:00Z, SHA-256 ab12."};
  Sentences as_planned_words = before;
  as_planned_words.emplace_back("As far as it is recorded it was done as planned.");
  Sentences otherwise = before;
  otherwise.emplace_back("Done otherwise than planned:");
  otherwise.emplace_back("It is judged by a worth-it margin of 2, and the claim says 1.25.");
  otherwise.emplace_back("Looks asked for: 1, 2; planned: one, at the end.");

  EXPECT_EQ(planned_and_done(plan, as_it_was_planned(), as_planned({}, plan)), as_planned_words);
  EXPECT_EQ(planned_and_done(plan, as_it_was_planned(), {.worth_it_margin = 2, .looks = {1, 2}}),
            otherwise);
}

}  // namespace
}  // namespace keenfall::workbench
