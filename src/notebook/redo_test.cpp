// Having back what was undone, in any order, and what undoing leaves alone.
#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/looks.h"
#include "notebook/made_notebook.h"
#include "notebook/merge.h"
#include "notebook/notebook.h"
#include "notebook/notebook_failure.h"
#include "notebook/strike.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include <string>
#include <vector>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::kOpener;
using testing::ScratchFolder;

trials::Trial with_its_own_kit(const std::string& name) {
  trials::Trial trial = a_trial();
  trial.name = name;
  for (trials::Blade& blade : trial.blades) blade.name += " of " + name;
  for (trials::Run& run : trial.runs) {
    run.arm.blade += " of " + name;
    run.arm.medium.name = name;
  }
  return trial;
}

trials::Trial called(const std::string& name) {
  trials::Trial trial = a_trial();
  trial.name = name;
  return trial;
}

class Redoing : public ::testing::Test {
 protected:
  [[nodiscard]] Notebook made(const std::string& name) const {
    return std::move(
        *Notebook::create(scratch_.file(name), {.uid = name, .made_by = "test"}, kOpener));
  }
  Authorship next() {
    return {.client_id = "c" + std::to_string(++changes_),
            .at_utc = "2026-11-26T12:00:00Z",
            .who = "R."};
  }
  void take_in(const trials::Trial& trial) { ASSERT_TRUE(take(notebook_, trial, {}, next())); }
  void undo(std::int64_t entry) {
    const auto undone = notebook_.undo(entry, next());
    ASSERT_TRUE(undone) << undone.error().sentence;
    EXPECT_EQ(check(notebook_), std::vector<std::string>());
  }
  std::string refusal_of(std::int64_t entry) {
    const auto undone = notebook_.undo(entry, next());
    return undone ? "it was undone" : undone.error().sentence;
  }
  void look(Notebook& notebook, const std::string& trial) {
    ASSERT_TRUE(count_look(
        notebook,
        trial,
        {.inputs = {.sha256 = std::string(64, 'a')}, .program_version = "0.1.0", .answer = "{}"},
        next()));
  }

  ScratchFolder scratch_{::testing::UnitTest::GetInstance()->current_test_info()->name()};
  Notebook notebook_ = made("bench.keen");
  int changes_ = 0;
};

TEST_F(Redoing, ATrialNamesTheUndoingThatTookABladeItShares) {
  take_in(called("matting"));
  take_in(called("rope"));
  undo(2);
  undo(1);

  EXPECT_EQ(refusal_of(3),
            "Entry 3 (undo: take a trial into rope) cannot be undone: later entries stand in its "
            "way: 4 (undo: take a trial into matting).");
  undo(4);
  undo(3);

  EXPECT_EQ(*kept_trial(notebook_, "matting"), called("matting"));
  EXPECT_EQ(*kept_trial(notebook_, "rope"), called("rope"));
}

TEST_F(Redoing, ATrialNamesTheLaterOneThatTookItsName) {
  take_in(with_its_own_kit("felt"));
  take_in(with_its_own_kit("rope"));
  undo(1);
  take_in(with_its_own_kit("felt"));

  EXPECT_EQ(refusal_of(3),
            "Entry 3 (undo: take a trial into felt) cannot be undone: later entries stand in its "
            "way: 4 (take a trial into felt).");
  undo(4);
  undo(3);
  EXPECT_EQ(*kept_trial(notebook_, "felt"), with_its_own_kit("felt"));
}

TEST_F(Redoing, ATrialNamesTheLaterOneThatTookABladesOrAMediumsName) {
  const auto sharing = [](auto change) {
    trials::Trial trial = with_its_own_kit("later");
    change(trial);
    return trial;
  };
  const trials::Trial with_the_blade = sharing(
      [](trials::Trial& trial) { trial.blades[0].name = trial.runs[0].arm.blade = "A of felt"; });
  const trials::Trial with_the_medium =
      sharing([](trials::Trial& trial) { trial.runs[0].arm.medium.name = "felt"; });
  take_in(with_its_own_kit("felt"));
  take_in(with_its_own_kit("rope"));
  undo(1);

  for (const trials::Trial& later : {with_the_blade, with_the_medium}) {
    take_in(later);
    const auto entry = static_cast<std::int64_t>(notebook_.journal().size());
    EXPECT_EQ(refusal_of(3),
              "Entry 3 (undo: take a trial into felt) cannot be undone: later entries stand in its "
              "way: " +
                  std::to_string(entry) + " (take a trial into later).");
    undo(entry);
  }
  undo(3);
  EXPECT_EQ(*kept_trial(notebook_, "felt"), with_its_own_kit("felt"));
}

TEST_F(Redoing, AReadingNamesTheUndoingThatTookItsSeries) {
  trials::Trial trial = a_trial();
  trial.series.pop_back();
  take_in(trial);
  take_in(a_trial());
  trials::Trial longer = a_trial();
  longer.runs[0].readings.push_back({.series = 1, .cuts = 20, .reading = 0.5});
  take_in(longer);
  undo(3);
  undo(2);

  EXPECT_EQ(refusal_of(4),
            "Entry 4 (undo: take a trial into matting) cannot be undone: later entries stand in "
            "its way: 5 (undo: take a trial into matting).");
  undo(5);
  undo(4);
  EXPECT_EQ(*kept_trial(notebook_, "matting"), longer);
}

// The blade is another trial's too, so that it stays when it leaves this one.
TEST_F(Redoing, ARunOrASpecimenNamesTheUndoingThatTookItsBladeFromTheTrial) {
  const auto of_one_blade = [](const std::string& name, std::size_t blade) {
    trials::Trial trial = called(name);
    trial.blades = {a_trial().blades[blade]};
    trial.blades[0].specimens.clear();
    trial.runs = {a_trial().runs[blade]};
    return trial;
  };
  take_in(of_one_blade("rope", 1));
  trials::Trial trial = of_one_blade("matting", 0);
  take_in(trial);
  trial.blades.push_back({.name = "B"});
  take_in(trial);
  trials::Trial with_specimen = trial;
  with_specimen.blades[1].specimens = {{.name = "1"}};
  trials::Trial with_run = trial;
  with_run.runs.push_back(a_trial().runs[1]);

  for (const trials::Trial& more : {with_specimen, with_run}) {
    take_in(more);
    const auto taken = static_cast<std::int64_t>(notebook_.journal().size());
    EXPECT_EQ(refusal_of(3),
              "Entry 3 (take a trial into matting) cannot be undone: later entries rest on it: " +
                  std::to_string(taken) + " (take a trial into matting).");
    undo(taken);
    undo(3);
    EXPECT_EQ(refusal_of(taken + 1),
              "Entry " + std::to_string(taken + 1) +
                  " (undo: take a trial into matting) cannot be undone: later entries stand in its "
                  "way: " +
                  std::to_string(taken + 2) + " (undo: take a trial into matting).");
    undo(taken + 2);
    undo(taken + 1);
    EXPECT_EQ(*kept_trial(notebook_, "matting"), more);
    undo(taken + 4);
  }
}

TEST_F(Redoing, AMergeLeavesTheLooksItBroughtAndThoseAfterIt) {
  Notebook other = made("other.keen");
  ASSERT_TRUE(take(other, a_trial(), {}, next()));
  look(other, "matting");
  look(other, "matting");
  ASSERT_TRUE(merge(notebook_, other, "merge other.keen", {}, next()));
  look(notebook_, "matting");

  undo(1);
  EXPECT_TRUE(kept_trials(notebook_).empty());
  undo(3);

  EXPECT_EQ(*kept_trial(notebook_, "matting"), a_trial());
  EXPECT_EQ(looks_at(notebook_, "matting").size(), 3U);
  EXPECT_EQ(check(notebook_), std::vector<std::string>());
}

TEST_F(Redoing, IsNotRefusedButCalledDamagedWhereARowWasChangedByAnotherHand) {
  const std::string path = scratch_.file("flawed.keen");
  {
    Notebook flawed = made("flawed.keen");
    ASSERT_TRUE(take(flawed, a_trial(), {}, next()));
  }
  sqlite3* database = nullptr;
  ASSERT_EQ(sqlite3_open(path.c_str(), &database), SQLITE_OK);
  ASSERT_EQ(
      sqlite3_exec(
          database, "UPDATE blade SET steel = 'C60' WHERE name = 'A'", nullptr, nullptr, nullptr),
      SQLITE_OK);
  ASSERT_EQ(sqlite3_changes(database), 1);
  ASSERT_EQ(sqlite3_close(database), SQLITE_OK);
  Notebook flawed = std::move(*Notebook::open_to_write(path, kOpener));

  EXPECT_THROW((void)flawed.undo(1, next()), NotebookDamaged);
  EXPECT_EQ(flawed.journal().size(), 1U);
}

// Else the slip and what stands for it would both count.
TEST_F(Redoing, AStrikeRestsUnderTheReadingThatWasTakenInItsPlace) {
  for (const std::size_t slip : {std::size_t{3}, std::size_t{0}}) {  // the last one, and the first
    const std::string name = "trial " + std::to_string(slip);
    trials::Trial trial = with_its_own_kit(name);
    for (trials::Run& run : trial.runs) {
      for (trials::Reading& reading : run.readings) reading.struck_reason.reset();
    }
    take_in(trial);
    const trials::Run& run = trial.runs[0];
    const auto struck = strike(notebook_,
                               {.trial = name,
                                .blade = run.arm.blade,
                                .run = run.name,
                                .cuts = run.readings[slip].cuts,
                                .reason = "mistyped"},
                               next());
    ASSERT_TRUE(struck);
    trial.runs[0].readings[slip].reading += 100;
    take_in(trial);
    const std::int64_t correction = notebook_.journal().back().entry;

    const std::string refusal = refusal_of(struck->entry.entry);
    EXPECT_NE(refusal.find("rest on it: " + std::to_string(correction) + " (take a trial"),
              std::string::npos)
        << refusal;
    undo(correction);
    undo(struck->entry.entry);
  }
}

}  // namespace
}  // namespace keenfall::notebook
