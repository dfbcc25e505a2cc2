#include "notebook/bench_runs.h"

#include "notebook/a_notebook_test.h"
#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/merge.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::ANotebook;
using testing::kOpener;

// One of each kind, with all that it can say.
std::vector<bench::Entry> all_kinds() {
  using namespace bench;
  const std::vector<WhatWasDone> kinds{
      Sharpened{.stone = "45 um plate", .passes_per_side = 24, .minutes = 2.8, .burr = "cork"},
      AngleMeasured{.angle = {17.5}, .where = "heel, left"},
      ReadingTaken{.at_cuts = 0,
                   .reading = 104.2,
                   .station = "heel",
                   .scale_line = "ST,GS,+  104.2 g",
                   .note = "slack"},
      StartDecided{.decision = StartDecision::go_on_unmatched, .reason = "late"},
      CutsMade{.cuts = 0.5},
      Happened{.kind = trials::EventKind::hit_something, .at_cuts = 3, .words = "a staple"},
      Paused{},
      Resumed{.blade_wiped = true, .piece_changed = true},
      PieceTaken{},
      Noted{.words = "two lines\nof it"},
      Closed{.reason = "called away"},
      TakenBack{.id = "e11"},
      Voided{.reason = "underlay cut through"}};
  std::vector<Entry> entries;
  for (const WhatWasDone& what : kinds) {
    const std::string number = std::to_string(entries.size() + 1);
    entries.push_back(
        {.id = "e" + number, .device = "phone", .at_ms = 1764000000123, .what = what});
  }
  return entries;
}

class BenchRuns : public ANotebook {
 protected:
  void SetUp() override {
    notebook_.emplace(
        std::move(*Notebook::create(path_, {.uid = "u", .made_by = "test"}, kOpener)));
    ASSERT_TRUE(take(*notebook_, a_trial(), {}, next()));
    trial_uid_ = *trial_uid_of(*notebook_, a_trial().name);
    ASSERT_FALSE(begin_bench_run(*notebook_, a_run("r1")));
  }

  [[nodiscard]] BenchRun a_run(const std::string& uid) const {
    return {.uid = uid,
            .trial_uid = trial_uid_,
            .to_cut = {.name = "3", .arm = 2, .specimen = "first", .block = 3, .order = 14},
            .begun_at_utc = "2026-11-28T18:00:00Z",
            .who = "R.",
            .entries = {}};
  }

  std::optional<base::Problem> keep(const std::string& run, std::vector<bench::Entry> entries) {
    const std::vector<ArrivedEntries> arrived{{.run_uid = run, .entries = std::move(entries)}};
    return keep_entries(*notebook_, arrived).front();
  }

  std::optional<Notebook> notebook_;
  std::string trial_uid_;
};

TEST_F(BenchRuns, ComeBackWithEveryKindOfEntry) {
  ASSERT_FALSE(keep("r1", all_kinds()));

  BenchRun expected = a_run("r1");
  expected.entries = all_kinds();
  EXPECT_EQ(bench_run(*notebook_, "r1"), expected);
  EXPECT_EQ(bench_runs_of(*notebook_, trial_uid_), std::vector<BenchRun>{expected});
  EXPECT_TRUE(check(*notebook_).empty());
}

TEST_F(BenchRuns, AreFoundByTheirBlock) {
  BenchRun other = a_run("r2");
  other.to_cut.block = 4;
  ASSERT_FALSE(begin_bench_run(*notebook_, other));

  EXPECT_EQ(bench_runs_in_block(*notebook_, trial_uid_, 3), std::vector<BenchRun>{a_run("r1")});
  EXPECT_EQ(bench_runs_in_block(*notebook_, trial_uid_, 4), std::vector<BenchRun>{other});
  EXPECT_TRUE(bench_runs_in_block(*notebook_, "another", 3).empty());
}

TEST_F(BenchRuns, AreThereAfterOpeningAgain) {
  ASSERT_FALSE(keep("r1", all_kinds()));

  notebook_.reset();
  const auto again = Notebook::open_to_read(path_);

  ASSERT_TRUE(again);
  EXPECT_EQ(bench_run(*again, "r1")->entries, all_kinds());
}

TEST_F(BenchRuns, AreBegunOnce) {
  EXPECT_FALSE(begin_bench_run(*notebook_, a_run("r1")));
  EXPECT_EQ(bench_runs_of(*notebook_, trial_uid_).size(), 1U);

  BenchRun other = a_run("r1");
  other.to_cut.arm = 0;
  const auto refused = begin_bench_run(*notebook_, other);
  ASSERT_TRUE(refused);
  EXPECT_EQ(refused->sentence, "A run with this id was begun, and it is another.");
}

TEST_F(BenchRuns, NeedATrial) {
  BenchRun run = a_run("r2");
  run.trial_uid = "nobody";

  ASSERT_TRUE(begin_bench_run(*notebook_, run));
  EXPECT_FALSE(bench_run(*notebook_, "r2"));
}

TEST_F(BenchRuns, KeepAnEntryThatArrivesAgainOnce) {
  ASSERT_FALSE(keep("r1", all_kinds()));
  ASSERT_FALSE(keep("r1", all_kinds()));

  EXPECT_EQ(bench_run(*notebook_, "r1")->entries, all_kinds());
}

TEST_F(BenchRuns, KeepNothingOfWhatContradictsAndAllOfTheRest) {
  ASSERT_FALSE(begin_bench_run(*notebook_, a_run("r2")));
  ASSERT_FALSE(keep("r1", {{.id = "a", .device = {}, .at_ms = 1, .what = bench::CutsMade{}}}));

  const std::vector<ArrivedEntries> arrived{
      {.run_uid = "r1",
       .entries = {{.id = "b", .device = {}, .at_ms = 2, .what = bench::CutsMade{}},
                   {.id = "a", .device = {}, .at_ms = 1, .what = bench::CutsMade{.cuts = 2}}}},
      {.run_uid = "nowhere", .entries = {}},
      {.run_uid = "r2",
       .entries = {{.id = "c", .device = {}, .at_ms = 3, .what = bench::CutsMade{}}}},
      // Of another run.
      {.run_uid = "r2",
       .entries = {{.id = "a", .device = {}, .at_ms = 1, .what = bench::CutsMade{}}}}};
  EXPECT_EQ(problem_of(*notebook_, arrived[0])->sentence,
            "An entry with the id a is there, and says something else.");
  EXPECT_FALSE(problem_of(*notebook_, arrived[2]));
  const auto problems = keep_entries(*notebook_, arrived);

  ASSERT_EQ(problems.size(), 4U);
  EXPECT_TRUE(problems[3]);
  ASSERT_TRUE(problems[0]);
  EXPECT_EQ(problems[0]->sentence, "An entry with the id a is there, and says something else.");
  ASSERT_TRUE(problems[1]);
  EXPECT_FALSE(problems[2]);
  EXPECT_EQ(bench_run(*notebook_, "r1")->entries.size(), 1U);
  EXPECT_EQ(bench_run(*notebook_, "r2")->entries.size(), 1U);
  EXPECT_TRUE(check(*notebook_).empty());
}

TEST_F(BenchRuns, ComeAlongWhereTheirNotebookIsMerged) {
  ASSERT_FALSE(keep("r1", all_kinds()));
  const std::string elsewhere = path_ + ".elsewhere.keen";
  Notebook into = std::move(*Notebook::create(elsewhere, {.uid = "v", .made_by = "test"}, kOpener));
  const auto merged = [&] { return merge(into, *notebook_, "merge", {}, next()); };

  ASSERT_TRUE(merged());
  BenchRun expected = a_run("r1");
  expected.entries = all_kinds();
  EXPECT_EQ(all_bench_runs(into), std::vector<BenchRun>{expected});

  bench::Entry more = all_kinds().front();
  more.id = "later";
  ASSERT_FALSE(keep("r1", {more}));
  ASSERT_TRUE(merged());
  EXPECT_EQ(bench_run(into, "r1")->entries.back(), more);
  EXPECT_EQ(bench_run(into, "r1")->entries.size(), all_kinds().size() + 1);
  EXPECT_TRUE(check(into).empty());
}

TEST_F(BenchRuns, AreNoneInANotebookOfAnOlderSchemaThatIsOnlyRead) {
  const std::string old = std::string(KEENFALL_SOURCE_DIR) + "/tests/notebooks/schema_3.keen";

  const auto notebook = Notebook::open_to_read(old);

  ASSERT_TRUE(notebook);
  EXPECT_TRUE(bench_runs_of(*notebook, "any").empty());
  EXPECT_FALSE(bench_run(*notebook, "any"));
}

}  // namespace
}  // namespace keenfall::notebook
