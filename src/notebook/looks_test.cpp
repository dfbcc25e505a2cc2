#include "notebook/looks.h"

#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/made_notebook.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <string>
#include <vector>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::kOpener;
using testing::ScratchFolder;

StoredJudgement judgement_of(char inputs) {
  return {.inputs = {.sha256 = std::string(64, inputs), .runs = 2, .readings = 8},
          .question = "--worth-it=1.5",
          .seed = {UINT64_MAX},
          .program_version = "0.1.0",
          .answer = "{\"answer\": \"B stays keen longer\"}\n"};
}

class Looks : public ::testing::Test {
 protected:
  Authorship next() {
    return {.client_id = "c" + std::to_string(++changes_),
            .at_utc = "2026-11-26T12:00:00Z",
            .who = "R."};
  }

  ScratchFolder scratch_{::testing::UnitTest::GetInstance()->current_test_info()->name()};
  Notebook notebook_ = std::move(
      *Notebook::create(scratch_.file("bench.keen"), {.uid = "u", .made_by = "test"}, kOpener));
  int changes_ = 0;
};

TEST_F(Looks, AreKeptWithWhatTheySaw) {
  ASSERT_TRUE(take(notebook_, a_trial(), {}, next()));
  EXPECT_TRUE(looks_at(notebook_, "matting").empty());

  const auto count = count_look(notebook_, "matting", judgement_of('a'), next());

  ASSERT_TRUE(count);
  EXPECT_EQ(count->looks, 1U);
  const auto looks = looks_at(notebook_, "matting");
  ASSERT_EQ(looks.size(), 1U);
  EXPECT_EQ(looks[0].who, "R.");
  EXPECT_EQ(looks[0].at_utc, "2026-11-26T12:00:00Z");
  EXPECT_EQ(looks[0].judgement, judgement_of('a'));
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(Looks, CountEachJudgingAndTheStatesTheySaw) {
  ASSERT_TRUE(take(notebook_, a_trial(), {}, next()));

  ASSERT_TRUE(count_look(notebook_, "matting", judgement_of('a'), next()));
  ASSERT_TRUE(count_look(notebook_, "matting", judgement_of('a'), next()));
  const auto count = count_look(notebook_, "matting", judgement_of('b'), next());

  EXPECT_EQ(count->looks, 3U);
  EXPECT_EQ(count->states, 2U);
}

TEST_F(Looks, StayWhereTheirTrialIsTakenBackAndAreThereWhenItReturns) {
  ASSERT_TRUE(take(notebook_, a_trial(), {}, next()));
  ASSERT_TRUE(count_look(notebook_, "matting", judgement_of('a'), next()));

  EXPECT_EQ(notebook_.last_to_undo(), 1);
  ASSERT_TRUE(notebook_.undo(1, next()));
  EXPECT_TRUE(check(notebook_).empty());
  ASSERT_TRUE(notebook_.undo(3, next()));

  EXPECT_EQ(looks_at(notebook_, "matting").size(), 1U);
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(Looks, GoOnWhereATrialIsTakenBackAndTakenAgainByItsName) {
  ASSERT_TRUE(take(notebook_, a_trial(), {}, next()));
  ASSERT_TRUE(count_look(notebook_, "matting", judgement_of('a'), next()));
  ASSERT_TRUE(notebook_.undo(1, next()));
  ASSERT_TRUE(take(notebook_, a_trial(), {}, next()));

  const auto count = count_look(notebook_, "matting", judgement_of('b'), next());

  EXPECT_EQ(count->looks, 2U);
  EXPECT_EQ(count->states, 2U);
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(Looks, GoOnWhereATableThatWasTakenBackIsTakenAgainUnderAnotherName) {
  const std::vector<TakenTable> first = {{"a.csv", std::string(64, '1')}};
  const std::vector<TakenTable> second = {{"b.csv", std::string(64, '2')}};
  ASSERT_TRUE(take(notebook_, a_trial(), first, next()));
  trials::Trial grown = a_trial();
  grown.runs[0].readings.push_back({.cuts = 20, .reading = 150});
  ASSERT_TRUE(take(notebook_, grown, second, next()));
  ASSERT_TRUE(count_look(notebook_, "matting", judgement_of('a'), next()));
  ASSERT_TRUE(notebook_.undo(2, next()));
  ASSERT_TRUE(notebook_.undo(1, next()));
  grown.name = "fresh start";
  ASSERT_TRUE(take(notebook_, grown, second, next()));

  EXPECT_EQ(count_look(notebook_, "fresh start", judgement_of('b'), next())->looks, 2U);
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(Looks, AreNotThoseOfATrialThatIsStillThereOrHasNothingInCommon) {
  const std::vector<TakenTable> table = {{"a.csv", std::string(64, '1')}};
  ASSERT_TRUE(take(notebook_, a_trial(), table, next()));
  ASSERT_TRUE(count_look(notebook_, "matting", judgement_of('a'), next()));
  trials::Trial other = a_trial();
  other.name = "other";
  ASSERT_TRUE(take(notebook_, other, table, next()));
  EXPECT_TRUE(looks_at(notebook_, "other").empty());

  ASSERT_TRUE(notebook_.undo(3, next()));
  ASSERT_TRUE(notebook_.undo(1, next()));
  ASSERT_TRUE(take(notebook_, other, {{"b.csv", std::string(64, '2')}}, next()));

  EXPECT_TRUE(looks_at(notebook_, "other").empty());
}

TEST_F(Looks, CannotBeTakenBack) {
  ASSERT_TRUE(take(notebook_, a_trial(), {}, next()));
  ASSERT_TRUE(count_look(notebook_, "matting", judgement_of('a'), next()));

  const auto undone = notebook_.undo(2, next());

  ASSERT_FALSE(undone);
  EXPECT_EQ(undone.error().sentence,
            "Entry 2 (look at matting) cannot be undone: what was seen was seen, and looks are "
            "counted.");
}

TEST_F(Looks, AreAtATrialThatIsThere) {
  const auto count = count_look(notebook_, "matting", judgement_of('a'), next());

  ASSERT_FALSE(count);
  EXPECT_EQ(count.error().sentence, "The notebook has no trial called \"matting\" any more.");
  EXPECT_TRUE(notebook_.journal().empty());
}

}  // namespace
}  // namespace keenfall::notebook
