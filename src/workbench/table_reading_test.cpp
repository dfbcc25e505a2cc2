#include "workbench/table_reading.h"

#include "notebook/check.h"
#include "notebook/digest.h"
#include "workbench/notebook_changes.h"
#include "workbench/notebook_pages.h"
#include "workbench/said_on_a_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <unistd.h>

namespace keenfall::workbench {
namespace {

using exchange::TypedRows;

const Hand kTypist{
    .who = "R.", .machine_words = "bench-2, process 4711", .at_utc = "2026-11-26T12:00:00Z"};
const std::vector<std::string> kHeader = {"blade", "medium", "run", "cuts", "reading"};
const TypedRows kTally = {kHeader,
                          {"A", "rubber", "1", "0", "100"},
                          {"A", "rubber", "1", "10", "150"},
                          {"B", "rubber", "1", "0", "101"}};

class TableReading : public ::testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::temp_directory_path() /
              ("keenfall_tables_" + std::to_string(getpid()) + "_" +
               ::testing::UnitTest::GetInstance()->current_test_info()->name());
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directory(folder_);
    path_ = notebook("bench.keen");
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  [[nodiscard]] std::string notebook(const std::string& name) const {
    const std::string path = folder_ / name;
    std::filesystem::remove(path);
    if (!new_notebook(path, "keenfall test", kTypist)) throw std::runtime_error("no notebook");
    return path;
  }
  [[nodiscard]] static wire::ReadTables typed(const TypedRows& rows,
                                              const std::string& name = "tally") {
    wire::ReadTables asked;
    asked.tables.push_back(exchange::typed_table(name, rows));
    return asked;
  }
  [[nodiscard]] auto take(const wire::TakeTables& asked) const {
    return take_tables_in_hand(path_, asked, kTypist);
  }
  [[nodiscard]] std::size_t entries() const {
    return notebook::Notebook::open_to_read(path_)->journal().size();
  }

  std::filesystem::path folder_;
  std::string path_;
};

TEST_F(TableReading, SaysWhatWouldComeInAndChangesNothing) {
  const auto read = read_tables(path_, typed(kTally));

  ASSERT_TRUE(read);
  EXPECT_EQ(read->survey.good->trial.runs.size(), 2U);
  EXPECT_THAT(read->arms, testing::ElementsAre("A on rubber", "B on rubber"));
  EXPECT_EQ(read->trial_name, "tally");
  EXPECT_FALSE(read->into);
  EXPECT_EQ(entries(), 0U);
}

TEST_F(TableReading, NamesAnArmByAllThatMakesIt) {
  const auto read = read_tables("",
                                typed({{"blade",
                                        "medium",
                                        "run",
                                        "cuts",
                                        "reading",
                                        "bevel_angle_per_side_deg",
                                        "method",
                                        "medium_condition"},
                                       {"A", "rubber", "1", "0", "100", "17", "slice", "dry"}}));

  EXPECT_THAT(read->arms, testing::ElementsAre("A (17° per side) on rubber, dry: slice"));
}

TEST_F(TableReading, NeedsNoNotebookForANewTrial) { EXPECT_TRUE(read_tables("", typed(kTally))); }

TEST_F(TableReading, TakesTypedCellsAsOneChange) {
  const auto taken = take({.read = typed(kTally), .trial_name = {}});

  ASSERT_TRUE(taken);
  EXPECT_EQ(taken->trial_name, "tally");
  EXPECT_EQ(taken->trial.size(), 32U);
  EXPECT_EQ(taken->taken.runs_added, 2U);
  EXPECT_EQ(taken->taken.readings_added, 3U);
  EXPECT_EQ(taken->taken.entry->what, "take tally into tally");
  EXPECT_EQ(taken->last_entry, 1);
  EXPECT_EQ(entries(), 1U);
}

TEST_F(TableReading, TakenAgainItIsKnown) {
  const auto first = take({.read = typed(kTally), .trial_name = {}});
  ASSERT_TRUE(first);

  const auto again = take({.read = typed(kTally), .trial_name = {}});
  const auto read = read_tables(path_, typed(kTally));

  ASSERT_TRUE(again);
  EXPECT_FALSE(again->taken.entry);
  EXPECT_EQ(again->taken.runs_known, 2U);
  EXPECT_EQ(again->trial, first->trial);
  EXPECT_EQ(read->into->taken.runs_known, 2U);
  EXPECT_EQ(entries(), 1U);
}

TEST_F(TableReading, ANewTrialByANameThatIsThereIsRefused) {
  ASSERT_TRUE(take({.read = typed(kTally), .trial_name = {}}));
  TypedRows other = kTally;
  other[1][0] = "C";

  const auto taken = take({.read = typed(other), .trial_name = {}});
  const auto read = read_tables(path_, typed(other));

  ASSERT_FALSE(taken);
  EXPECT_EQ(taken.error().front().sentence,
            "There is a trial “tally” already. Take the table into it, or give the new trial "
            "another name.");
  EXPECT_EQ(read->trial_name, "tally 2");
  EXPECT_EQ(read->namesake.value().trial_name, "tally");
  EXPECT_FALSE(read->into);
  EXPECT_TRUE(take({.read = typed(other), .trial_name = "tally 2"}));
}

TEST_F(TableReading, SaysWhatGrowsInATrialThatIsThere) {
  const auto first = take({.read = typed(kTally), .trial_name = {}});
  TypedRows grown = kTally;
  grown.push_back({"B", "rubber", "1", "10", "201"});
  wire::ReadTables asked = typed(grown, "tally in the evening");
  asked.trial = first->trial;

  const auto read = read_tables(path_, asked);
  const auto taken = take({.read = asked, .trial_name = {}});

  ASSERT_TRUE(read->into && taken);
  EXPECT_EQ(read->into->trial, "tally");
  EXPECT_EQ(read->into->taken.runs_grown, 1U);
  EXPECT_EQ(read->into->taken.runs_known, 1U);
  EXPECT_EQ(taken->taken.runs_grown, 1U);
  EXPECT_EQ(taken->taken.readings_added, 1U);
  EXPECT_EQ(taken->trial, first->trial);
}

TEST_F(TableReading, WarnsOfARunThatIsInByTheSameNameAndSaysLess) {
  const TypedRows header = {{"blade", "medium", "run", "cuts", "reading", "method"}};
  TypedRows sliced = header;
  sliced.push_back({"A", "rubber", "1", "0", "100", "slice"});
  const auto taken = take({.read = typed(sliced), .trial_name = {}});
  ASSERT_TRUE(taken);
  TypedRows again = header;
  again.push_back({"A", "rubber", "1", "0", "140", ""});
  again.push_back({"A", "rubber", "2", "0", "104", ""});
  wire::ReadTables asked = typed(again);
  asked.trial = taken->trial;

  const auto read = read_tables(path_, asked);

  ASSERT_TRUE(read && read->into);
  EXPECT_THAT(read->into->taken.remarks,
              testing::ElementsAre("Run 1 of A on rubber: slice is in already; run 1 of A on "
                                   "rubber would come in beside it, as a run of its own."));
}

TEST_F(TableReading, SaysWhatContradictsATrialThatIsThere) {
  const auto first = take({.read = typed(kTally), .trial_name = {}});
  TypedRows other = kTally;
  other[2][4] = "155";
  wire::ReadTables asked = typed(other);
  asked.trial = first->trial;

  const auto read = read_tables(path_, asked);
  const auto taken = take({.read = asked, .trial_name = {}});

  ASSERT_EQ(read->into->contradictions.size(), 1U);
  EXPECT_EQ(read->into->contradictions.front().sentence,
            "Run 1 of A on rubber is in the trial already, and there reads 150 at 10, and here "
            "155.");
  ASSERT_FALSE(taken);
  EXPECT_EQ(taken.error().front().sentence, read->into->contradictions.front().sentence);
  EXPECT_EQ(entries(), 1U);
}

TEST_F(TableReading, ATrialThatIsNotThereIsRefused) {
  wire::ReadTables asked = typed(kTally);
  asked.trial = std::string(32, 'f');

  const auto read = read_tables(path_, asked);
  const auto taken = take({.read = asked, .trial_name = {}});

  ASSERT_FALSE(read);
  ASSERT_FALSE(taken);
  EXPECT_EQ(read.error().front().sentence,
            "The notebook has no such trial; it may have been undone.");
}

TEST_F(TableReading, KeepsTheGoodRowsOnlyWhereThatIsSaid) {
  TypedRows rows = kTally;
  rows[2][4] = "1o7";

  const auto refused = take({.read = typed(rows), .trial_name = {}});
  const auto taken = take({.read = typed(rows), .trial_name = {}, .keeps_good = true});

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().sentence,
            "reading “1o7” has letters that look like digits; write digits only.");
  ASSERT_TRUE(taken);
  EXPECT_EQ(taken->taken.readings_added, 2U);
  EXPECT_EQ(taken->taken.entry->what, "take tally into tally, in part");
  EXPECT_EQ(taken->problems.size(), 1U);
  EXPECT_THAT(taken->left_out.front(), testing::HasSubstr("line 3"));
}

TEST_F(TableReading, AGuessIsOnlyTakenWhereItIsChosen) {
  TypedRows rows = kTally;
  rows[0][0] = "Sample";
  wire::ReadTables asked = typed(rows);

  const auto read = read_tables(path_, asked);
  const auto refused = take({.read = asked, .trial_name = {}});
  asked.options.columns = read->survey.proposed;
  const auto taken = take({.read = asked, .trial_name = {}});

  EXPECT_TRUE(read->survey.good);
  ASSERT_FALSE(refused);
  EXPECT_THAT(refused.error().front().sentence, testing::HasSubstr("no column blade"));
  EXPECT_TRUE(taken);
}

TEST_F(TableReading, ANotebookThatIsNotThereIsRefused) {
  const auto taken = take_tables_in_hand(
      folder_ / "none.keen", {.read = typed(kTally), .trial_name = {}}, kTypist);

  ASSERT_FALSE(taken);
  EXPECT_EQ(taken.error().front().kind, base::ProblemKind::unreadable);
}

TEST_F(TableReading, TypedCellsAreTheTrialOfTheirTextTakenFromAFile) {
  const auto cell = [](std::vector<std::string> texts) { return rc::gen::elementOf(texts); };
  const std::string by_file = notebook("file.keen");
  const std::string by_cells = notebook("cells.keen");
  int trials = 0;
  const bool holds = rc::check("typed cells and their file are one trial", [&] {
    TypedRows rows = {{"blade", "medium", "run", "cuts", "reading", "note"}};
    const int count = *rc::gen::inRange(1, 8);
    for (int i = 0; i < count; ++i) {
      rows.push_back({*cell({"A", "B", "#1", "C; \"old\""}),
                      "sisal",
                      *cell({"1", "2"}),
                      std::to_string(i),
                      *cell({"104", "99,5", "1o7", "131.5", "240?"}),
                      *cell({"", "loud", "a,b", "  ", "<b>\n</b>"})});
    }
    const wire::ReadTables asked = typed(rows);
    const std::string file = folder_ / "tally.csv";
    std::ofstream(file, std::ios::binary) << asked.tables.front().bytes;
    const std::string name = "trial " + std::to_string(++trials);
    const bool keeps_good = *rc::gen::arbitrary<bool>();

    const auto from_file = take_into(
        {.notebook = by_file, .tables = {file}, .trial = name, .keeps_good = keeps_good}, kTypist);
    const auto from_cells = take_tables_in_hand(
        by_cells, {.read = asked, .trial_name = name, .keeps_good = keeps_good}, kTypist);

    RC_ASSERT(from_file.has_value() == from_cells.has_value());
    if (!from_file) {
      RC_ASSERT(from_file.error().size() == from_cells.error().size());
      for (std::size_t i = 0; i < from_file.error().size(); ++i) {
        RC_ASSERT(said_on_a_page(from_file.error()[i]).sentence == from_cells.error()[i].sentence);
      }
      return;
    }
    const auto one = notebook::Notebook::open_to_read(by_file);
    const auto other = notebook::Notebook::open_to_read(by_cells);
    const auto trial_of_file = notebook::kept_trial(*one, name);
    const auto trial_of_cells = notebook::kept_trial(*other, name);
    RC_ASSERT(trial_of_file->runs == trial_of_cells->runs);
    RC_ASSERT(trial_of_file->blades == trial_of_cells->blades);
    RC_ASSERT(notebook::check(*other).empty());
  });
  EXPECT_TRUE(holds);
}

TEST_F(TableReading, TheDigestOfWhatWasTypedIsThatOfItsText) {
  const wire::ReadTables asked = typed(kTally);
  const std::string file = folder_ / "tally.csv";
  std::ofstream(file, std::ios::binary) << asked.tables.front().bytes;
  ASSERT_TRUE(take({.read = asked, .trial_name = {}}));

  const auto again = take_into({.notebook = path_, .tables = {file}, .trial = "tally"}, kTypist);

  ASSERT_TRUE(again);
  EXPECT_FALSE(again->taken.entry);  // not even a table that is new
}

}  // namespace
}  // namespace keenfall::workbench
