#include "exchange/table_in_hand.h"

#include "exchange/long_table.h"
#include "exchange/taken_table.h"
#include "exchange/text_file.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

const TypedRows kTwoReadings = {{"blade", "medium", "run", "cuts", "reading"},
                                {"A", "sisal", "1", "0", "104"},
                                {"A", "sisal", "1", "15", "131"}};

trials::Trial trial_of(const TableInHand& table) {
  const auto trial = take_tables_in_hand({&table, 1}, {});
  if (!trial) throw std::runtime_error(base::in_words(trial.error().front()));
  return *trial;
}

TEST(TableInHand, TypedCellsAreTheTextOfATableWithSemicolons) {
  const TableInHand table = typed_table("tally", kTwoReadings);

  EXPECT_EQ(table.bytes, "blade;medium;run;cuts;reading\nA;sisal;1;0;104\nA;sisal;1;15;131\n");
}

TEST(TableInHand, TypedCellsAreTakenAsTheirTextIs) {
  const TableInHand table = typed_table("tally", kTwoReadings);

  EXPECT_EQ(trial_of(table).runs, taken(table.bytes).runs);
}

TEST(TableInHand, ACellKeepsItsSeparatorsQuotesAndHash) {
  const TableInHand table = typed_table(
      "t", {{"blade", "medium", "run", "cuts", "reading"}, {"#1; \"old\"", "a,b", "1", "0", "9"}});

  const trials::Trial trial = trial_of(table);

  EXPECT_EQ(trial.runs.at(0).arm.blade, "#1; \"old\"");
  EXPECT_EQ(trial.runs.at(0).arm.medium.name, "a,b");
}

TEST(TableInHand, ALineEndInATypedCellIsASpaceSoThatARowStaysALine) {
  const TableInHand table = typed_table("t", {{"blade", "medium"}, {"A\nB", "x\r\ny"}});

  EXPECT_EQ(table.bytes, "blade;medium\nA B;x  y\n");
}

TEST(TableInHand, ATypedRowThatStopsShortIsFilledUpAndAnEmptyOneIsAnEmptyLine) {
  const TableInHand table = typed_table("t", {{"a", "b", "c", ""}, {"1"}, {"", ""}, {"2", "3"}});

  EXPECT_EQ(table.bytes, "a;b;c\n1;;\n\n2;3;\n");
}

TEST(TableInHand, NothingTypedIsAnEmptyTable) {
  const TableInHand table = typed_table("t", {});

  const auto trial = take_tables_in_hand({&table, 1}, {});

  ASSERT_FALSE(trial);
  EXPECT_EQ(trial.error().front().sentence, "The file is empty.");
}

TEST(TableInHand, OneTypedColumnIsATableThatLacksTheOthers) {
  const TableInHand table = typed_table("t", {{"blade"}, {"A"}});

  const auto trial = take_tables_in_hand({&table, 1}, {});

  ASSERT_FALSE(trial);
  EXPECT_EQ(trial.error().size(), 4U);
  EXPECT_THAT(trial.error().front().sentence, testing::HasSubstr("There is no column medium."));
}

TEST(TableInHand, ATrialIsNamedAfterTheFileOrAsTheTypedTableIs) {
  EXPECT_EQ(trial_name_after({.name = "bench/spring.v2.csv", .bytes = ""}), "spring.v2");
  EXPECT_EQ(trial_name_after(typed_table("Bench 1.5 kg", {})), "Bench 1.5 kg");
}

TEST(TableInHand, NoTableIsRefused) {
  const auto trial = take_tables_in_hand({}, {});

  ASSERT_FALSE(trial);
  EXPECT_EQ(trial.error().front().sentence, "No table was named.");
}

TEST(TableInHand, ADecimalCommaThatIsTypedIsOne) {
  const TableInHand table = typed_table(
      "t", {{"blade", "medium", "run", "cuts", "reading"}, {"A", "sisal", "1", "0", "104,5"}});

  EXPECT_EQ(trial_of(table).runs.at(0).readings.at(0).reading, 104.5);
}

TEST(TableInHand, ALineOfMoreCellsThanAnySheetHasIsRefused) {
  const TableInHand table{.name = "wide.csv", .bytes = "a,b\n" + std::string(20'000, ',')};

  const auto trial = take_tables_in_hand({&table, 1}, {});

  ASSERT_FALSE(trial);
  EXPECT_EQ(trial.error().front().sentence,
            "The line has more than 16,384 cells; no table is as wide.");
  EXPECT_EQ(trial.error().front().place.line, 2U);
}

// Texts of the characters that a table's text could trip over.
rc::Gen<std::string> any_cell() {
  return rc::gen::container<std::string>(
      rc::gen::element('a', 'B', '1', '0', '.', ',', ';', '"', '#', '\t', '\n', '\r', ' ', '='));
}

RC_GTEST_PROP(TableInHand, TypedRowsComeBackFromTheirTextAsTheyWere, ()) {
  const auto rows =
      *rc::gen::container<TypedRows>(rc::gen::container<std::vector<std::string>>(any_cell()));

  const TableInHand table = typed_table("t", rows);

  std::size_t lines = 0;
  for (const char c : table.bytes) lines += c == '\n' ? 1U : 0U;
  RC_ASSERT(lines == rows.size());
}

}  // namespace
}  // namespace keenfall::exchange
