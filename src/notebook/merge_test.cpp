#include "notebook/merge.h"

#include "notebook/check.h"
#include "notebook/content_in_words_test.h"
#include "notebook/looks.h"
#include "notebook/made_notebook.h"
#include "notebook/strike.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::content_in_words;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using testing::kOpener;
using testing::ScratchFolder;
using ::testing::StartsWith;

class Merging : public ::testing::Test {
 protected:
  [[nodiscard]] Notebook made(const std::string& name) const {
    return std::move(
        *Notebook::create(scratch_.file(name), {.uid = name, .made_by = "test"}, kOpener));
  }
  [[nodiscard]] Notebook copied(const Notebook& notebook, const std::string& name) const {
    EXPECT_TRUE(notebook.back_up_to(scratch_.file(name)));
    return std::move(*Notebook::open_to_write(scratch_.file(name), kOpener));
  }
  Authorship next() {
    return {.client_id = "c" + std::to_string(++changes_),
            .at_utc = "2026-11-26T12:00:00Z",
            .who = "R."};
  }
  void take_in(Notebook& notebook, const trials::Trial& trial, char digest) {
    ASSERT_TRUE(take(notebook, trial, {{"table.csv", std::string(64, digest)}}, next()));
  }

  [[nodiscard]] auto set_apart(Notebook& here, const Notebook& there) {
    return merge(here,
                 there,
                 "merge there.keen",
                 {.alike_names = AlikeNames::are_apart, .apart = "T."},
                 next());
  }

  ScratchFolder scratch_{::testing::UnitTest::GetInstance()->current_test_info()->name()};
  int changes_ = 0;
};

trials::Trial with_a_reading_more(double reading) {
  trials::Trial trial = a_trial();
  trial.runs[0].readings.push_back({.cuts = 20, .reading = reading});
  return trial;
}

TEST_F(Merging, BringsOverWhatACopyHasMore) {
  Notebook here = made("here.keen");
  take_in(here, a_trial(), 'a');
  Notebook there = copied(here, "there.keen");
  take_in(there, with_a_reading_more(150), 'b');
  ASSERT_TRUE(strike(
      here, {.trial = "matting", .blade = "B", .run = "1", .cuts = 15, .reason = "burr"}, next()));

  const auto merged = merge(here, there, "merge there.keen", {}, next());

  ASSERT_TRUE(merged);
  EXPECT_EQ(merged->runs.runs_grown, 1U);
  EXPECT_EQ(merged->runs.readings_added, 1U);
  trials::Trial both = with_a_reading_more(150);
  both.runs[1].readings[3].struck_reason = "burr";
  EXPECT_EQ(*kept_trial(here, "matting"), both);
  EXPECT_EQ(here.journal().back().what, "merge there.keen");
  EXPECT_TRUE(check(here).empty());
}

TEST_F(Merging, NamesEveryRunThatIsRecordedOtherwiseAndMergesNothing) {
  Notebook here = made("here.keen");
  take_in(here, a_trial(), 'a');
  Notebook there = copied(here, "there.keen");
  take_in(here, with_a_reading_more(150), 'b');
  take_in(there, with_a_reading_more(180), 'c');
  const auto before = content_in_words(here);

  const auto merged = merge(here, there, "merge there.keen", {}, next());

  ASSERT_FALSE(merged);
  ASSERT_EQ(merged.error().size(), 1U);
  EXPECT_EQ(merged.error()[0].sentence,
            "Run 1 of A on new matting is in the trial already, and there reads 150 at 20, and "
            "here 180.");
  EXPECT_EQ(content_in_words(here), before);
}

TEST_F(Merging, LetsWhatIsHereStandWhereThatIsAskedFor) {
  Notebook here = made("here.keen");
  take_in(here, a_trial(), 'a');
  Notebook there = copied(here, "there.keen");
  take_in(here, with_a_reading_more(150), 'b');
  take_in(there, with_a_reading_more(180), 'c');

  const auto merged = merge(here, there, "merge there.keen", {.keeps_what_is_here = true}, next());

  ASSERT_TRUE(merged);
  EXPECT_EQ(merged->not_taken, 1U);
  EXPECT_EQ(kept_trial(here, "matting")->runs[0].readings.back().reading, 150);
  EXPECT_THAT(merged->remarks,
              ElementsAre("Not taken: Run 1 of A on new matting is in the trial already, and there "
                          "reads 150 at 20, and here 180."));
}

TEST_F(Merging, AsksWhetherWhatIsCalledAlikeIsTheSame) {
  Notebook here = made("here.keen");
  Notebook there = made("there.keen");
  take_in(here, a_trial(), 'a');
  take_in(there, a_trial(), 'b');

  const auto merged = merge(here, there, "merge there.keen", {}, next());

  ASSERT_FALSE(merged);
  ASSERT_EQ(merged.error().size(), 3U);
  EXPECT_EQ(merged.error()[0].sentence,
            "Both notebooks have a trial called matting, and nothing says that it is the same "
            "one.");
  EXPECT_THAT(merged.error()[2].sentence, HasSubstr("a blade called B"));
  EXPECT_EQ(merged.error()[0].accepted,
            "--same, if what is called alike is the same; --apart=NAME, if it is not");
}

TEST_F(Merging, KnowsATrialAgainByTheTableItTook) {
  Notebook here = made("here.keen");
  Notebook there = made("there.keen");
  take_in(here, a_trial(), 'a');
  take_in(there, a_trial(), 'a');
  take_in(there, with_a_reading_more(150), 'b');

  const auto merged = merge(here, there, "merge there.keen", {}, next());

  ASSERT_TRUE(merged) << merged.error().front().sentence;
  EXPECT_EQ(*kept_trial(here, "matting"), with_a_reading_more(150));
  EXPECT_EQ(kept_trials(here).size(), 1U);
}

TEST_F(Merging, SetsApartWhatIsCalledAlikeAndIsNotTheSame) {
  Notebook here = made("here.keen");
  Notebook there = made("there.keen");
  take_in(here, a_trial(), 'a');
  trials::Trial other = a_trial();
  other.blades[0].steel = "X90CrMoV18";
  take_in(there, other, 'b');

  const auto merged = set_apart(here, there);

  ASSERT_TRUE(merged);
  EXPECT_EQ(merged->trials_added, 1U);
  EXPECT_EQ(*kept_trial(here, "matting"), a_trial());
  const auto apart = kept_trial(here, "matting (T.)");
  ASSERT_TRUE(apart);
  EXPECT_EQ(apart->blades[0].name, "A (T.)");
  EXPECT_EQ(apart->blades[0].steel, "X90CrMoV18");
  EXPECT_EQ(apart->runs[0].arm.blade, "A (T.)");
  EXPECT_THAT(merged->remarks,
              ElementsAre(HasSubstr("matting (T.)"), HasSubstr("A (T.)"), HasSubstr("B (T.)")));
  const auto again = merge(here, there, "merge there.keen", {}, next());
  ASSERT_TRUE(again);
  EXPECT_FALSE(again->entry);
}

TEST_F(Merging, SetsApartARunOfTheSameTrialThatIsAnotherOne) {
  Notebook here = made("here.keen");
  take_in(here, a_trial(), 'a');
  Notebook there = copied(here, "there.keen");
  trials::Trial mine = a_trial();
  trials::Trial yours = a_trial();
  for (trials::Trial* trial : {&mine, &yours}) {
    trial->runs.push_back(trial->runs[0]);
    trial->runs[2].name = "2";
    trial->runs[2].readings[0].reading = trial == &mine ? 98 : 111;
  }
  take_in(here, mine, 'b');
  take_in(there, yours, 'c');

  EXPECT_FALSE(merge(here, there, "merge there.keen", {}, next()));
  const auto merged = set_apart(here, there);

  ASSERT_TRUE(merged);
  const auto trial = kept_trial(here, "matting");
  ASSERT_EQ(trial->runs.size(), 4U);
  EXPECT_EQ(trial->runs[2].readings[0].reading, 98);
  EXPECT_EQ(trial->runs[3].name, "2 (T.)");
  EXPECT_EQ(trial->runs[3].readings[0].reading, 111);
}

TEST_F(Merging, RefusesABladeThatIsRecordedOtherwise) {
  Notebook here = made("here.keen");
  Notebook there = made("there.keen");
  take_in(here, a_trial(), 'a');
  trials::Trial other = a_trial();
  other.blades[0].hardness = trials::Hardness{.reading = 61};
  take_in(there, other, 'a');

  const auto merged = merge(here, there, "merge there.keen", {}, next());

  ASSERT_FALSE(merged);
  ASSERT_EQ(merged.error().size(), 1U);
  EXPECT_EQ(merged.error()[0].sentence, "The notebook has a blade A already, of another hardness.");
}

TEST_F(Merging, SaysWhereTheOtherNotebookStrikesOrVoidsForOtherReasons) {
  Notebook here = made("here.keen");
  take_in(here, a_trial(), 'a');
  Notebook there = copied(here, "there.keen");
  const StrikeRequest reading{
      .trial = "matting", .blade = "A", .run = "1", .cuts = 15, .reason = "burr"};
  StrikeRequest other_reading = reading;
  other_reading.reason = "slipped there";
  ASSERT_TRUE(strike(here, reading, next()));
  ASSERT_TRUE(strike(there, other_reading, next()));
  ASSERT_TRUE(
      strike(there, {.trial = "matting", .blade = "B", .run = "1", .reason = "wet stock"}, next()));

  const auto merged = merge(here, there, "merge there.keen", {}, next());

  ASSERT_TRUE(merged);
  EXPECT_EQ(kept_trial(here, "matting")->runs[0].readings[3].struck_reason, "burr");
  EXPECT_EQ(kept_trial(here, "matting")->runs[1].voided_reason, "wet stock");
  EXPECT_THAT(
      merged->remarks,
      ElementsAre("Run 1 of A on new matting has readings that the other notebook strikes out for "
                  "other reasons; those here stand.",
                  "Run 1 of B on new matting is voided now, as in the other notebook: wet stock."));
}

TEST_F(Merging, SaysWhichWordsOfARunAreOtherwiseHereAndThere) {
  Notebook here = made("here.keen");
  take_in(here, a_trial(), 'a');
  const auto refusal_of = [&](auto change) {
    const std::string name = "there" + std::to_string(++changes_) + ".keen";
    Notebook there = made(name);
    trials::Trial other = a_trial();
    change(other.runs[0]);
    take_in(there, other, 'a');
    const auto merged = merge(here, there, "merge", {.alike_names = AlikeNames::are_one}, next());
    return merged ? "" : merged.error().at(0).sentence;
  };
  const std::string there = "Run 1 of A on new matting is in the trial already, and there ";

  EXPECT_EQ(refusal_of([](trials::Run& run) { run.block = "7"; }),
            there + "has the block \"1\", and here \"7\".");
  EXPECT_EQ(refusal_of([](trials::Run& run) { run.order = 9; }),
            there + "has the order 2, and here 9.");
  EXPECT_EQ(refusal_of([](trials::Run& run) { run.notes = {"fresh"}; }),
            there + "has the notes \"tired\", and here \"fresh\".");
}

TEST_F(Merging, KeepsARemarkOnWhatIsNoticedOfTheWhole) {
  Notebook here = made("here.keen");
  Notebook there = made("there.keen");
  take_in(here, a_trial(), 'a');
  trials::Trial other = a_trial();
  other.blades[0].name = "a";
  other.runs[0].arm.blade = "a";
  take_in(there, other, 'b');
  const MergeRules rules{
      .alike_names = AlikeNames::are_one, .remarks_on = [](const trials::Trial& trial) {
        return std::vector<std::string>{std::to_string(trial.blades.size()) + " blades, " +
                                        std::to_string(trial.runs.size()) + " runs"};
      }};

  const auto merged = merge(here, there, "merge there.keen", rules, next());

  ASSERT_TRUE(merged) << merged.error().at(0).sentence;
  EXPECT_EQ(merged->remarks.back(), "3 blades, 3 runs");
  EXPECT_EQ(kept_trial(here, "matting")->remarks.back(), "3 blades, 3 runs");
  EXPECT_FALSE(merge(here, there, "merge there.keen", rules, next())->entry);
}

TEST_F(Merging, StrikesWhatOnlyTheOtherNotebookStrikes) {
  Notebook here = made("here.keen");
  take_in(here, a_trial(), 'a');
  Notebook there = copied(here, "there.keen");
  ASSERT_TRUE(strike(
      there, {.trial = "matting", .blade = "A", .run = "1", .cuts = 15, .reason = "burr"}, next()));

  const auto merged = merge(here, there, "merge there.keen", {}, next());

  ASSERT_TRUE(merged);
  EXPECT_EQ(kept_trial(here, "matting")->runs[0].readings[3].struck_reason, "burr");
  EXPECT_THAT(merged->remarks,
              ElementsAre("Run 1 of A on new matting: struck out in the other notebook, and now "
                          "here, 1 reading."));
  EXPECT_EQ(content_in_words(here), content_in_words(there));
}

TEST_F(Merging, BringsLooksAlongOnce) {
  Notebook here = made("here.keen");
  take_in(here, a_trial(), 'a');
  Notebook there = copied(here, "there.keen");
  const StoredJudgement judgement{
      .inputs = {.sha256 = std::string(64, 'a')}, .program_version = "0.1.0", .answer = "{}"};
  ASSERT_TRUE(count_look(here, "matting", judgement, next()));
  ASSERT_TRUE(count_look(there, "matting", judgement, next()));

  const auto merged = merge(here, there, "merge there.keen", {}, next());

  EXPECT_EQ(merged->looks_added, 1U);
  EXPECT_EQ(looks_at(here, "matting").size(), 2U);
  EXPECT_TRUE(check(here).empty());
}

// One letter of a blade's steel.
TEST_F(Merging, TakesNothingOfADamagedNotebook) {
  Notebook here = made("here.keen");
  {
    Notebook there = made("there.keen");
    take_in(there, a_trial(), 'a');
  }
  std::fstream file(scratch_.file("there.keen"), std::ios::in | std::ios::out | std::ios::binary);
  const std::string bytes{std::istreambuf_iterator<char>(file), {}};
  file.seekp(static_cast<std::streamoff>(bytes.find("AC75S")));
  file.write("AC75s", 5);
  file.close();
  const auto there = Notebook::open_to_read(scratch_.file("there.keen"));

  const auto merged = merge(here, *there, "merge there.keen", {}, next());

  ASSERT_FALSE(merged);
  EXPECT_THAT(
      merged.error().at(0).sentence,
      StartsWith("This notebook is damaged, so nothing of it was merged. The table blade: 1 "
                 "row is not as written"));
  EXPECT_TRUE(kept_trials(here).empty());
}

TEST_F(Merging, TakesANotebookOfTheFirstSchema) {
  Notebook here = made("here.keen");
  const auto there =
      Notebook::open_to_read(std::string(KEENFALL_SOURCE_DIR) + "/tests/notebooks/schema_1.keen");
  ASSERT_TRUE(there);

  ASSERT_TRUE(merge(here, *there, "merge schema_1.keen", {}, next()));

  EXPECT_EQ(content_in_words(here), content_in_words(*there));
}

TEST_F(Merging, DoesNotCallATableTakenOfWhichARunWasRefused) {
  Notebook here = made("here.keen");
  take_in(here, a_trial(), 'a');
  Notebook there = copied(here, "there.keen");
  take_in(here, with_a_reading_more(150), 'b');
  take_in(there, with_a_reading_more(180), 'c');

  ASSERT_TRUE(merge(here, there, "merge there.keen", {.keeps_what_is_here = true}, next()));

  for (const std::string& line : content_in_words(here)) {
    EXPECT_EQ(line.find("sha256='" + std::string(64, 'c')), std::string::npos) << line;
  }
}

TEST_F(Merging, MakesNoOneBladeOfTwo) {
  Notebook here = made("here.keen");
  Notebook there = made("there.keen");
  take_in(here, a_trial(), 'a');
  trials::Trial other = a_trial();
  other.name = "rope";
  other.blades[1].name = "A (T.)";
  other.blades[1].specimens.clear();
  other.runs[1].arm.blade = "A (T.)";
  take_in(there, other, 'b');

  const auto merged = set_apart(here, there);

  ASSERT_FALSE(merged);
  EXPECT_EQ(merged.error()[0].sentence,
            "The other notebook's blades A and A (T.) would both be A (T.) here.");
}

TEST_F(Merging, GivesRunsThatAreSetApartNamesOfTheirOwn) {
  Notebook here = made("here.keen");
  take_in(here, a_trial(), 'a');
  Notebook there = copied(here, "there.keen");
  const auto with_runs = [](std::vector<std::pair<std::string, double>> runs) {
    trials::Trial trial = a_trial();
    for (const auto& [name, start] : runs) {
      trial.runs.push_back(trial.runs[0]);
      trial.runs.back().name = name;
      trial.runs.back().readings[0].reading = start;
    }
    return trial;
  };
  take_in(here, with_runs({{"2", 98}, {"2 (T.)", 97}}), 'b');
  take_in(there, with_runs({{"2", 111}}), 'c');

  const auto merged = set_apart(here, there);

  ASSERT_TRUE(merged);
  EXPECT_EQ(kept_trial(here, "matting")->runs.back().name, "2 (T. 2)");
  Notebook fresh = made("fresh.keen");
  ASSERT_TRUE(merge(fresh, here, "merge here.keen", {}, next()));
  EXPECT_EQ(content_in_words(fresh), content_in_words(here));
}

TEST_F(Merging, AsksWhetherARunThatWasReadIsTheOneThatWasTested) {
  Notebook here = made("here.keen");
  take_in(here, a_trial(), 'a');
  Notebook there = copied(here, "there.keen");
  trials::Trial read = a_trial();
  read.runs.push_back(read.runs[0]);
  read.runs[2].name = "2";
  trials::Trial tested = read;
  read.runs[2].edge_lives.clear();
  tested.runs[2].readings.clear();
  take_in(here, read, 'b');
  take_in(there, tested, 'c');

  const auto merged = merge(here, there, "merge there.keen", {}, next());

  ASSERT_FALSE(merged);
  EXPECT_EQ(merged.error()[0].sentence,
            "Run 2 of A on new matting is in both notebooks, and nothing says that it is the same "
            "one.");
  EXPECT_TRUE(merge(here, there, "merge there.keen", {.alike_names = AlikeNames::are_one}, next()));
}

}  // namespace
}  // namespace keenfall::notebook
