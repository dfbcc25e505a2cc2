#include "notebook/notebook.h"

#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/looks.h"
#include "notebook/made_notebook.h"
#include "notebook/strike.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::kOpener;
using testing::ScratchFolder;

class ANotebook : public ::testing::Test {
 protected:
  [[nodiscard]] Notebook made() const {
    return std::move(*Notebook::create(
        path_, {.uid = "00112233445566778899aabbccddeeff", .made_by = "keenfall test"}, kOpener));
  }

  Authorship next() {
    return {.client_id = "c" + std::to_string(++changes_),
            .at_utc = "2026-11-26T12:00:00Z",
            .who = "R."};
  }

  ScratchFolder scratch_{::testing::UnitTest::GetInstance()->current_test_info()->name()};
  const std::filesystem::path& folder_ = scratch_.path();
  std::string path_ = scratch_.file("bench.keen");
  int changes_ = 0;
};

TEST_F(ANotebook, GivesATrialBackAsItWasTaken) {
  Notebook notebook = made();

  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));

  EXPECT_EQ(*kept_trial(notebook, "matting"), a_trial());
  EXPECT_TRUE(check(notebook).empty());
}

TEST_F(ANotebook, HoldsNothingTwiceThatIsTakenTwice) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));

  const auto same_table = take(notebook, a_trial(), {{"copy.csv", std::string(64, 'a')}}, next());

  EXPECT_FALSE(same_table->entry);
  EXPECT_EQ(same_table->runs_known, 2U);
  EXPECT_EQ(notebook.journal().size(), 1U);
}

TEST_F(ANotebook, LetsARunGrow) {
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

TEST_F(ANotebook, LetsARunGrowInTheMiddleAndKeepsItsStrikes) {
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

TEST_F(ANotebook, TakesAStrikeThatATableHasNow) {
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

TEST_F(ANotebook, TakesAMendedReadingOnceTheMistypedOneIsStruck) {
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

TEST_F(ANotebook, KnowsARunAgainOfWhichMoreIsRecordedNow) {
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

TEST_F(ANotebook, TakesTheOtherPartOfATableItHasAPartOf) {
  Notebook notebook = made();
  trials::Trial part = a_trial();
  part.runs.pop_back();
  ASSERT_TRUE(take(notebook, part, {{"matting.csv", std::string(64, 'a')}}, next()));

  const auto taken = take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next());

  EXPECT_EQ(taken->runs_added, 1U);
  EXPECT_EQ(taken->runs_known, 1U);
}

TEST_F(ANotebook, StrikesInTheRunThatIsNamedWithItsEdge) {
  Notebook notebook = made();
  trials::Trial two_edges = a_trial();
  two_edges.runs[1] = two_edges.runs[0];
  two_edges.runs[1].arm.edge.bevel_angle = trials::PerSideAngle{20};
  ASSERT_TRUE(take(notebook, two_edges, {}, next()));
  StrikeRequest request{.trial = "matting", .blade = "A", .run = "1", .reason = "burr"};

  EXPECT_FALSE(strike(notebook, request, next()));
  request.blade = "A (20° per side, 9 um)";
  ASSERT_TRUE(strike(notebook, request, next()));

  EXPECT_TRUE(kept_trial(notebook, "matting")->runs[1].voided_reason);
  request.reason = " ";
  EXPECT_FALSE(strike(notebook, request, next()));
}

TEST_F(ANotebook, RefusesARunThatContradictsAndKeepsNothingOfTheTable) {
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

TEST_F(ANotebook, RefusesABladeOfAnotherSteel) {
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

TEST_F(ANotebook, StrikesAReadingUndoesItAndRedoesIt) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));
  const StrikeRequest request{
      .trial = "matting", .blade = "B", .run = "1", .cuts = 15, .reason = "thread slipped"};
  trials::Trial with_strike = a_trial();
  with_strike.runs[1].readings[3].struck_reason = "thread slipped";

  ASSERT_TRUE(strike(notebook, request, next()));
  EXPECT_EQ(*kept_trial(notebook, "matting"), with_strike);
  ASSERT_TRUE(notebook.undo(2, next()));
  EXPECT_EQ(*kept_trial(notebook, "matting"), a_trial());
  ASSERT_TRUE(notebook.undo(3, next()));

  EXPECT_EQ(*kept_trial(notebook, "matting"), with_strike);
  EXPECT_EQ(notebook.journal().size(), 4U);
  EXPECT_EQ(notebook.journal()[3].what,
            "redo: strike at 15 in run 1 of B on new matting, trial matting");
  EXPECT_TRUE(check(notebook).empty());
}

TEST_F(ANotebook, VoidsARun) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));

  const auto struck = strike(
      notebook, {.trial = "matting", .blade = "A", .run = "1", .reason = "met the bench"}, next());

  EXPECT_EQ(struck->voided_runs, 1U);
  EXPECT_EQ(kept_trial(notebook, "matting")->runs[0].voided_reason, "met the bench");
}

TEST_F(ANotebook, AsksWhichRunIsMeantWhereSeveralAreCalledThat) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));

  const auto struck =
      strike(notebook, {.trial = "matting", .run = "1", .reason = "slipped"}, next());

  ASSERT_FALSE(struck);
  EXPECT_EQ(struck.error().sentence,
            "Several runs are called that: run 1 of A (17° per side, 9 um) on new matting, dry; "
            "run 1 of B "
            "(17° per side, 9 um) on new matting, dry.");
}

TEST_F(ANotebook, NamesWhatRestsOnAnEntryThatIsToBeUndone) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));
  trials::Trial other = a_trial();
  other.name = "rope";
  ASSERT_TRUE(take(notebook, other, {{"rope.csv", std::string(64, 'b')}}, next()));

  const auto undone = notebook.undo(1, next());

  ASSERT_FALSE(undone);
  EXPECT_EQ(undone.error().sentence,
            "Entry 1 (take matting.csv into matting) cannot be undone: later entries rest on it: 2 "
            "(take rope.csv into rope).");
  EXPECT_EQ(notebook.last_to_undo(), 2);
  EXPECT_TRUE(notebook.undo(2, next()));
  EXPECT_TRUE(notebook.undo(1, next()));
  EXPECT_TRUE(kept_trials(notebook).empty());
  EXPECT_FALSE(notebook.last_to_undo());
  EXPECT_TRUE(check(notebook).empty());
}

// A run, or a table, that was added to later as well: taken from the middle, the rest would stand
// at other places than the journal says.
TEST_F(ANotebook, UndoesWhatGrewInSeveralEntriesFromTheLastOn) {
  Notebook notebook = made();
  trials::Trial trial = a_trial();
  ASSERT_TRUE(take(notebook, trial, {}, next()));
  for (const char* run : {"2", "3"}) {
    trial.runs[1].readings.push_back({.cuts = trial.runs[1].readings.back().cuts + 5});
    trial.runs.push_back(a_trial().runs[0]);
    trial.runs.back().name = run;
    ASSERT_TRUE(take(notebook, trial, {}, next()));
  }

  const auto middle = notebook.undo(2, next());

  ASSERT_FALSE(middle);
  EXPECT_EQ(middle.error().sentence,
            "Entry 2 (take a trial into matting) cannot be undone: later entries rest on it: 3 "
            "(take a trial into matting).");
  ASSERT_TRUE(notebook.undo(3, next()));
  ASSERT_TRUE(notebook.undo(2, next()));
  EXPECT_EQ(*kept_trial(notebook, "matting"), a_trial());
  ASSERT_TRUE(take(notebook, trial, {}, next()));
  EXPECT_EQ(*kept_trial(notebook, "matting"), trial);
  EXPECT_FALSE(notebook.undo(4, next()));  // its places are taken
}

TEST_F(ANotebook, DoesNotUndoASeriesThatLaterReadingsAreIn) {
  Notebook notebook = made();
  trials::Trial trial = a_trial();
  trial.series.pop_back();
  ASSERT_TRUE(take(notebook, trial, {}, next()));
  trial = a_trial();
  ASSERT_TRUE(take(notebook, trial, {}, next()));
  trial.runs[0].readings.push_back({.series = 1, .cuts = 20, .reading = 0.5});
  ASSERT_TRUE(take(notebook, trial, {}, next()));

  EXPECT_FALSE(notebook.undo(2, next()));
  EXPECT_TRUE(notebook.undo(3, next()));
  EXPECT_TRUE(notebook.undo(2, next()));
}

TEST_F(ANotebook, CountsAChangeThatArrivesTwiceOnce) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {{"matting.csv", std::string(64, 'a')}}, next()));
  const StrikeRequest request{
      .trial = "matting", .blade = "B", .run = "1", .cuts = 15, .reason = "slipped"};
  const Authorship by = next();

  const auto first = strike(notebook, request, by);
  const auto again = strike(notebook, request, by);

  EXPECT_EQ(first->entry, again->entry);
  EXPECT_EQ(notebook.journal().size(), 2U);
}

TEST_F(ANotebook, TellsASecondWriterWhoHasItAndLetsReadersIn) {
  const Notebook notebook = made();

  const auto second = Notebook::open_to_write(path_, kOpener);
  const auto reader = Notebook::open_to_read(path_);

  ASSERT_FALSE(second);
  EXPECT_EQ(second.error().sentence,
            "The notebook is being written to by R. on bench-2, process 4711, since "
            "2026-11-26T12:00:00Z, and one writes at a time.");
  EXPECT_TRUE(reader);
}

TEST_F(ANotebook, IsOneFileOnceItIsClosed) {
  {
    Notebook notebook = made();
    ASSERT_TRUE(take(notebook, a_trial(), {}, next()));
  }
  { const auto reader = Notebook::open_to_read(path_); }

  std::size_t files = 0;
  for (const auto& entry : std::filesystem::directory_iterator(folder_)) {
    files += entry.is_regular_file() ? 1U : 0U;
  }
  EXPECT_EQ(files, 1U);
  std::filesystem::copy_file(path_, folder_ / "copy.keen");
  EXPECT_EQ(*kept_trial(*Notebook::open_to_read(folder_ / "copy.keen"), "matting"), a_trial());
}

TEST_F(ANotebook, IsBackedUpWhileItIsOpen) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {}, next()));

  ASSERT_TRUE(notebook.back_up_to(folder_ / "backup.keen"));

  const auto backup = Notebook::open_to_read(folder_ / "backup.keen");
  EXPECT_EQ(*kept_trial(*backup, "matting"), a_trial());
  EXPECT_TRUE(check(*backup).empty());
  EXPECT_FALSE(notebook.back_up_to(folder_ / "backup.keen"));
}

// As a power cut leaves it: the first page says already how long the file will be, the log has the
// pages.
TEST_F(ANotebook, OpensWhereFoldingTheLogInWasInterrupted) {
  Notebook notebook = made();
  trials::Trial trial = a_trial();
  for (int run = 2; run < 50; ++run) {  // so that the file has to grow
    trial.runs.push_back(trial.runs.front());
    trial.runs.back().name = std::to_string(run);
  }
  ASSERT_TRUE(take(notebook, trial, {}, next()));
  std::filesystem::copy_file(path_, folder_ / "cut.keen");
  std::filesystem::copy_file(path_ + "-wal", folder_ / "cut.keen-wal");
  std::fstream(folder_ / "cut.keen", std::ios::in | std::ios::out | std::ios::binary)
      .seekp(29)
      .put(1);  // 65,536 pages and more, big-endian at byte 28

  const auto opened = Notebook::open_to_read(folder_ / "cut.keen");

  ASSERT_TRUE(opened) << opened.error().sentence;
  EXPECT_TRUE(check(*opened).empty());
  EXPECT_EQ(*kept_trial(*opened, "matting"), trial);
}

TEST_F(ANotebook, RefusesWhatIsNoNotebookAndLeavesItAlone) {
  const auto sentence = [&](const std::string& name) {
    return Notebook::open_to_write(folder_ / name, kOpener).error().sentence;
  };
  std::ofstream(folder_ / "words.keen") << std::string(500, 'x');
  std::ofstream(folder_ / "empty.keen").flush();
  { const Notebook notebook = made(); }
  std::filesystem::copy_file(path_, folder_ / "short.keen");
  std::filesystem::resize_file(folder_ / "short.keen", 8192);
  std::filesystem::copy_file(path_, folder_ / "newer.keen");
  std::fstream(folder_ / "newer.keen", std::ios::in | std::ios::out | std::ios::binary)
      .seekp(63)
      .put(9);

  EXPECT_EQ(sentence("nowhere.keen"), "There is no such notebook.");
  EXPECT_EQ(sentence("words.keen"), "This is not a notebook.");
  EXPECT_EQ(sentence("empty.keen"),
            "There is nothing in this file: its making was interrupted, or it was emptied.");
  EXPECT_EQ(sentence("short.keen"), "This notebook is cut short: the end of the file is missing.");
  EXPECT_EQ(sentence("newer.keen"),
            "This notebook was written by a newer Keenfall (format 9; this one knows up to 2). It "
            "was left as it is.");
  EXPECT_EQ(sentence("."), "A notebook is a file, and this is none.");
  EXPECT_FALSE(Notebook::create(path_, {}, kOpener));
}

std::string stored_notebook(int version) {
  return std::string(KEENFALL_SOURCE_DIR) + "/tests/notebooks/schema_" + std::to_string(version) +
         ".keen";
}

std::int64_t version_in(const std::string& path) {
  constexpr int kPlaceOfVersion = 63;  // the last of four bytes, big-endian
  std::ifstream file(path, std::ios::binary);
  file.seekg(kPlaceOfVersion);
  return file.get();
}

TEST_F(ANotebook, OfTheFirstSchemaIsReadAsItIs) {
  std::filesystem::copy_file(stored_notebook(1), path_);

  {
    const auto notebook = Notebook::open_to_read(path_);
    ASSERT_TRUE(notebook);
    EXPECT_TRUE(check(*notebook).empty());
    EXPECT_EQ(kept_trial(*notebook, "m1")->runs.size(), 4U);
    EXPECT_TRUE(looks_at(*notebook, "m1").empty());
  }

  EXPECT_EQ(version_in(path_), 1);
}

TEST_F(ANotebook, OfTheFirstSchemaIsBroughtUpToDateWhereItIsWrittenTo) {
  std::filesystem::copy_file(stored_notebook(1), path_);

  {
    auto notebook = Notebook::open_to_write(path_, kOpener);
    ASSERT_TRUE(notebook);
    EXPECT_TRUE(check(*notebook).empty());
    EXPECT_EQ(notebook->journal().size(), 2U);
    const auto trial = kept_trial(*notebook, "m1");
    ASSERT_EQ(trial->runs.size(), 4U);
    EXPECT_EQ(trial->runs[0].readings[2].reading, 212);
    EXPECT_EQ(trial->runs[2].readings[2].struck_reason, "thread slipped");
    ASSERT_TRUE(notebook->undo(2, next()));
    EXPECT_TRUE(check(*notebook).empty());
  }

  EXPECT_EQ(version_in(path_), 2);
}

TEST_F(ANotebook, OfTheSecondSchemaStillOpens) {
  std::filesystem::copy_file(stored_notebook(2), path_);

  const auto notebook = Notebook::open_to_write(path_, kOpener);

  ASSERT_TRUE(notebook);
  EXPECT_TRUE(check(*notebook).empty());
  const auto looks = looks_at(*notebook, "felt");
  ASSERT_EQ(looks.size(), 1U);
  EXPECT_EQ(looks[0].judgement.inputs.readings, 16U);
  EXPECT_EQ(kept_trial(*notebook, "felt")->runs[1].readings[1].struck_reason, "thread slipped");
}

}  // namespace
}  // namespace keenfall::notebook
