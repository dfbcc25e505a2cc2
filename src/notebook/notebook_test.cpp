#include "notebook/notebook.h"

#include "notebook/a_notebook_test.h"
#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/strike.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::ANotebook;
using testing::kOpener;
using testing::ScratchFolder;

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

TEST_F(ANotebook, SaysWhatTheTrialOrTheRunHasWhereNothingFitsToStrike) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {}, next()));
  const auto said = [&](const StrikeRequest& request) {
    const auto refused = strike(notebook, request, next());
    return refused ? "struck" : refused.error().sentence + " | " + refused.error().accepted;
  };
  StrikeRequest request{.trial = "matting", .blade = "A", .run = "1", .cuts = 7, .reason = "slip"};

  EXPECT_EQ(said(request),
            "There is no reading after 7 cuts in run 1 of A on new matting. | --cuts as the run "
            "has them: 0, 5, 10, 15");
  request.cuts = 10;
  request.reading = 100;
  EXPECT_EQ(said(request),
            "There is no such reading after 10 cuts in run 1 of A on new matting. | one that it "
            "has there: 125 at mid");
  request = {.trial = "matting", .blade = "A", .run = "1", .cuts = 5, .reason = "slip"};
  EXPECT_EQ(said(request),
            "What run 1 of A on new matting has after 5 cuts is struck out already. | readings "
            "that count");
  request.blade = "petty";
  EXPECT_EQ(said(request),
            "No run called \"1\" is of --blade=petty. | run 1 of A (17° per side, 9 um) on new "
            "matting, dry; run 1 of B (17° per side, 9 um) on new matting, dry");
  request.run = "7";
  EXPECT_EQ(said(request), "The trial matting has no run called \"7\". | 1");
  EXPECT_EQ(notebook.journal().size(), 1U);
}

TEST_F(ANotebook, StrikesHowLongAnEdgeLastedAndUndoesIt) {
  Notebook notebook = made();
  ASSERT_TRUE(take(notebook, a_trial(), {}, next()));
  const StrikeRequest request{
      .trial = "matting", .blade = "B", .run = "1", .lasted_cuts = 40, .reason = "wet paper"};
  trials::Trial with_strike = a_trial();
  with_strike.runs[1].edge_lives[0].struck_reason = "wet paper";

  const auto struck = strike(notebook, request, next());

  ASSERT_TRUE(struck);
  EXPECT_EQ(struck->edge_lives, 1U);
  EXPECT_EQ(struck->run_words, "run 1 of B on new matting");
  EXPECT_EQ(struck->entry.what,
            "strike that it lasted 40 in run 1 of B on new matting, trial matting");
  EXPECT_EQ(*kept_trial(notebook, "matting"), with_strike);
  EXPECT_TRUE(check(notebook).empty());
  EXPECT_EQ(strike(notebook, request, next()).error().sentence,
            "That run 1 of B on new matting lasted 40 cuts is struck out already.");
  StrikeRequest other = request;
  other.lasted_cuts = 41;
  EXPECT_EQ(strike(notebook, other, next()).error().accepted, "--lasted as the run has it: 40");
  ASSERT_TRUE(notebook.undo(2, next()));
  EXPECT_EQ(*kept_trial(notebook, "matting"), a_trial());
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
            "This notebook was written by a newer Keenfall (format 9; this one knows up to 4). It "
            "was left as it is.");
  EXPECT_EQ(sentence("."), "A notebook is a file, and this is none.");
  EXPECT_FALSE(Notebook::create(path_, {}, kOpener));
}

}  // namespace
}  // namespace keenfall::notebook
