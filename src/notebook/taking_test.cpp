// A trial that is taken in: new, once more, with more to it, or otherwise.
#include "notebook/a_notebook_test.h"
#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/strike.h"
#include "notebook/watched_taking.h"

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::kOpener;

class ATakenTrial : public testing::ANotebook {};

TEST_F(ATakenTrial, GivesATrialBackAsItWasTaken) {
  Notebook notebook = made();

  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));

  EXPECT_EQ(*kept_trial(notebook, "matting"), a_trial());
  EXPECT_TRUE(check(notebook).empty());
}

TEST_F(ATakenTrial, HoldsNothingTwiceThatIsTakenTwice) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));

  const auto same_table = take(notebook, a_trial(), {{"copy.csv", std::string(64, 'a')}}, next());

  EXPECT_FALSE(same_table->entry);
  EXPECT_EQ(same_table->runs_known, 2U);
  EXPECT_EQ(notebook.journal().size(), 1U);
}

TEST_F(ATakenTrial, LetsARunGrow) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));
  trials::Trial more = a_trial();
  more.runs[1].readings.push_back({.cuts = 31, .reading = 200});

  const auto taken = take(notebook, more, {{"matting.csv", std::string(64, 'b')}}, next());

  ASSERT_TRUE(taken);
  EXPECT_EQ(taken->runs_grown, 1U);
  EXPECT_EQ(taken->runs_known, 1U);
  EXPECT_EQ(taken->readings_added, 1U);
  EXPECT_EQ(*kept_trial(notebook, "matting"), more);
  EXPECT_TRUE(check(notebook).empty());
}

TEST_F(ATakenTrial, LetsARunGrowInTheMiddleAndKeepsItsStrikes) {
  Notebook notebook = made();
  trials::Trial fewer = a_trial();
  fewer.runs[1].readings.erase(fewer.runs[1].readings.begin() + 2);
  fewer.runs[1].block.clear();
  ASSERT_TRUE(take(notebook, fewer, {{"matting.csv", std::string(64, 'a')}}, next()));
  ASSERT_TRUE(
      strike(notebook,
             {.trial = "matting", .blade = "B", .run = "1", .cuts = 15, .reason = "thread slipped"},
             next()));
  trials::Trial grown = a_trial();
  grown.runs[1].readings[3].struck_reason = "thread slipped";

  const auto taken = take(notebook, a_trial(), {{"matting.csv", std::string(64, 'b')}}, next());

  ASSERT_TRUE(taken);
  EXPECT_EQ(taken->readings_added, 1U);
  EXPECT_EQ(*kept_trial(notebook, "matting"), grown);
  EXPECT_TRUE(check(notebook).empty());
  ASSERT_TRUE(notebook.undo(3, next()));
  EXPECT_EQ(kept_trial(notebook, "matting")->runs[1].readings.size(), 3U);
}

TEST_F(ATakenTrial, TakesAStrikeThatATableHasNow) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));
  trials::Trial struck = a_trial();
  struck.runs[0].readings[0].struck_reason = "burr";
  struck.runs[1].voided_reason = "wet stock";

  const auto taken = take(notebook, struck, {{"matting.csv", std::string(64, 'b')}}, next());

  ASSERT_TRUE(taken);
  EXPECT_EQ(taken->runs_grown, 2U);
  EXPECT_EQ(*kept_trial(notebook, "matting"), struck);
}

TEST_F(ATakenTrial, TakesAMendedReadingOnceTheMistypedOneIsStruck) {
  Notebook notebook = made();
  trials::Trial mistyped = a_trial();
  mistyped.runs[0].readings[3].reading = 1355;
  ASSERT_TRUE(take(notebook, mistyped, {}, next()));
  EXPECT_FALSE(take(notebook, a_trial(), {}, next()));
  ASSERT_TRUE(
      strike(notebook,
             {.trial = "matting", .blade = "A", .run = "1", .cuts = 15, .reason = "mistyped"},
             next()));

  const auto taken = take(notebook, a_trial(), {}, next());

  ASSERT_TRUE(taken);
  EXPECT_EQ(taken->readings_added, 1U);
  const auto readings = kept_trial(notebook, "matting")->runs[0].readings;
  ASSERT_EQ(readings.size(), 5U);
  EXPECT_EQ(readings[3].struck_reason, "mistyped");
  EXPECT_EQ(readings[4].reading, 135.5);
  EXPECT_FALSE(readings[4].struck_reason);
  const auto again = take(notebook, a_trial(), {}, next());
  EXPECT_EQ(again->runs_known, 2U);
  EXPECT_FALSE(again->entry);
}

TEST_F(ATakenTrial, KnowsARunAgainOfWhichMoreIsRecordedNow) {
  Notebook notebook = made();
  trials::Trial less = a_trial();
  for (trials::Run& run : less.runs) {
    run.arm.edge.finish.clear();
    run.arm.medium.condition.clear();
  }
  ASSERT_TRUE(take(notebook, less, {}, next()));

  const auto taken = take(notebook, a_trial(), {}, next());

  ASSERT_TRUE(taken);
  EXPECT_EQ(taken->runs_added, 0U);
  EXPECT_EQ(taken->runs_grown, 2U);
  EXPECT_EQ(*kept_trial(notebook, "matting"), a_trial());
  EXPECT_TRUE(check(notebook).empty());
  EXPECT_EQ(take(notebook, less, {}, next())->runs_known, 2U);
}

TEST_F(ATakenTrial, TakesTheOtherPartOfATableItHasAPartOf) {
  Notebook notebook = made();
  trials::Trial part = a_trial();
  part.runs.pop_back();
  ASSERT_TRUE(take(notebook, part, {{"matting.csv", std::string(64, 'a')}}, next()));

  const auto taken = take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next());

  EXPECT_EQ(taken->runs_added, 1U);
  EXPECT_EQ(taken->runs_known, 1U);
}

TEST_F(ATakenTrial, RefusesARunThatContradictsAndKeepsNothingOfTheTable) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));
  trials::Trial other = a_trial();
  other.blades[1].steel = "X90CrMoV18";
  other.runs[0].readings[3].reading = 999;

  const auto taken = take(notebook, other, {{"matting.csv", std::string(64, 'c')}}, next());

  ASSERT_FALSE(taken);
  EXPECT_EQ(taken.error()[0].sentence,
            "Run 1 of A on new matting is in the trial already, and there reads 135.5 at 15, and "
            "here 999.");
  EXPECT_EQ(*kept_trial(notebook, "matting"), a_trial());
  EXPECT_EQ(notebook.journal().size(), 1U);
}

TEST_F(ATakenTrial, RefusesABladeOfAnotherSteel) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));
  trials::Trial other = a_trial();
  other.name = "rope";
  other.blades[0].steel = "X153CrMoV12";

  const auto taken = take(notebook, other, {{"rope.csv", std::string(64, 'd')}}, next());

  ASSERT_FALSE(taken);
  EXPECT_EQ(taken.error()[0].sentence,
            "The notebook has a blade A already, of another steel (C75S).");
}

TEST_F(ATakenTrial, KnowsNoRunAgainByChanceWhereOthersOfItsEdgeReadOtherwise) {
  Notebook notebook = made();
  const auto with_lives = [](std::vector<std::pair<double, double>> lives) {
    trials::Trial trial{.name = "felt", .blades = {{.name = "A"}}};
    for (const auto& [lasted, failed] : lives) {
      trials::Run run{.name = std::to_string(trial.runs.size() + 1),
                      .arm = {.blade = "A", .medium = {.name = "felt"}}};
      run.edge_lives = {{.lasted_cuts = lasted, .failed_by_cuts = failed}};
      trial.runs.push_back(run);
    }
    return trial;
  };
  ASSERT_TRUE(take(notebook, with_lives({{50, 60}, {60, 70}, {55, 60}}), {}, next()));
  trials::Trial other = with_lives({{50, 60}, {80, 90}, {90, 100}});
  for (trials::Run& run : other.runs) run.arm.edge.bevel_angle = trials::PerSideAngle{15};

  const auto taken = take(notebook, other, {}, next());

  ASSERT_TRUE(taken);
  EXPECT_EQ(taken->runs_added, 3U);
  EXPECT_TRUE(taken->remarks.empty());
  const auto kept = kept_trial(notebook, "felt");
  ASSERT_EQ(kept->runs.size(), 6U);
  EXPECT_FALSE(kept->runs[0].arm.edge.bevel_angle);
}

TEST_F(ATakenTrial, SaysWhichRunsAreKnownAgainByWhatWasRead) {
  Notebook notebook = made();
  trials::Trial trial = a_trial();
  for (trials::Run& run : trial.runs) run.arm.edge.finish.clear();
  ASSERT_TRUE(take(notebook, trial, {}, next()));

  const auto taken = take(notebook, a_trial(), {}, next());

  ASSERT_TRUE(taken);
  EXPECT_EQ(taken->remarks,
            (std::vector<std::string>{
                "Known again by what was read, though edge, medium or way of cutting are written "
                "otherwise now: run 1 of A on new matting.",
                "Known again by what was read, though edge, medium or way of cutting are written "
                "otherwise now: run 1 of B on new matting."}));
}

TEST_F(ATakenTrial, IsNotThereWhereTakingItWasStopped) {
  Notebook notebook = made();
  const std::vector<TakenTable> tables = {{"matting.csv", std::string(64, 'a')}};
  const auto stop = [](const base::Progress&) { return false; };

  const auto taken = take(notebook, a_trial(), tables, next(), stop);
  const auto tried = would_take(notebook, a_trial(), tables, stop);

  ASSERT_FALSE(taken || tried);
  EXPECT_EQ(taken.error().front().kind, base::ProblemKind::interrupted);
  EXPECT_EQ(tried.error().front().kind, base::ProblemKind::interrupted);
  EXPECT_TRUE(trial_names(notebook).empty());
  EXPECT_TRUE(notebook.journal().empty());
  EXPECT_TRUE(take(notebook, a_trial(), tables, next()));
}

TEST_F(ATakenTrial, IsNotThereWhereItWasStoppedAfterItsLastRun) {
  Notebook notebook = made();
  std::vector<double> told;
  const auto stop_before_the_disk = [&told](const base::Progress& now) {
    told.push_back(now.fraction_done);
    return now.stage != "bringing it to the disk";
  };

  const auto taken = take(notebook, a_trial(), {}, next(), stop_before_the_disk);

  ASSERT_FALSE(taken);
  EXPECT_EQ(taken.error().front().kind, base::ProblemKind::interrupted);
  EXPECT_TRUE(notebook.journal().empty());
  // What is left has a share of its own.
  EXPECT_EQ(told, (std::vector<double>{0, 0.6}));
}

}  // namespace
}  // namespace keenfall::notebook
