#include "exchange/data_package.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <utility>

namespace keenfall::exchange {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

const PackageTable& knives() {
  static const PackageTable table{
      .name = "knife",
      .fields = {{.name = "name"},
                 {.name = "cuts", .type = FieldType::integer},
                 {.name = "angle_deg", .type = FieldType::number, .may_be_missing = true},
                 {.name = "note", .may_be_missing = true}}};
  return table;
}

DescribedResource file(std::vector<std::string> missing_values = {""}) {
  return {.name = "knife", .path = "knife.csv", .missing_values = std::move(missing_values)};
}

struct Reading {
  base::ResultOrProblems<RowsRead> result;
  std::vector<PackageRow> rows;
  std::vector<std::size_t> lines;
};

Reading reading(std::string_view csv, const DescribedResource& resource = file()) {
  Reading reading;
  reading.result = read_rows(resource, knives(), csv, [&](const PackageRow& row, std::size_t line) {
    reading.rows.push_back(row);
    reading.lines.push_back(line);
  });
  return reading;
}

std::vector<std::string> problems(std::string_view csv,
                                  const DescribedResource& resource = file()) {
  std::vector<std::string> sentences;
  const Reading refused = reading(csv, resource);
  for (const base::Problem& problem : refused.result.error()) {
    sentences.push_back(base::in_words(problem));
  }
  return sentences;
}

PackageRow knife(const char* name,
                 std::int64_t cuts,
                 PackageCell angle_deg = {},
                 PackageCell note = {}) {
  return {std::string(name), cuts, std::move(angle_deg), std::move(note)};
}

TEST(PackageRows, AreReadWithTheirLines) {
  const auto read = reading("name,cuts,angle_deg,note\nA,10,17.5,\"two\nlines\"\nB,-3,,\n");

  EXPECT_THAT(read.rows,
              ElementsAre(knife("A", 10, 17.5, std::string("two\nlines")), knife("B", -3)));
  EXPECT_THAT(read.lines, ElementsAre(2, 4));
  EXPECT_EQ(read.result->row_count, 2U);
}

TEST(PackageRows, HaveTheirColumnsInAnyOrder) {
  EXPECT_THAT(reading("note,cuts,name,angle_deg\nx,1,A,2\n").rows,
              ElementsAre(knife("A", 1, 2.0, std::string("x"))));
}

TEST(PackageRows, AreMissingAColumnThatMayBeMissing) {
  EXPECT_THAT(reading("cuts,name\n1,A\n").rows, ElementsAre(knife("A", 1)));
}

TEST(PackageRows, MayHaveColumnsNobodyAskedFor) {
  const auto read = reading("cuts,colour,name,\n1,red,A,\n");

  EXPECT_THAT(read.rows, ElementsAre(knife("A", 1)));
  EXPECT_THAT(read.result->unknown_columns, ElementsAre("colour"));
}

TEST(PackageRows, OfOtherProgramsAreReadAsTheyAreDescribed) {
  DescribedResource other = file({"", "NA", "-"});
  other.delimiter = ';';
  other.quote = '\'';
  other.comment = '#';
  other.skips_blanks_before_cells = true;
  other.fields = {{.name = "angle_deg", .type = "number", .decimal_mark = ',', .group_mark = '.'}};

  const auto read = reading(
      "\xEF\xBB\xBF"
      "name; cuts; angle_deg ; note\r\n"
      "# measured twice\r\n"
      "'A;''a'''; '+7'; '1.017,5'; NA\r\n"
      "B; 12.0; -; \"x\"\r\n"
      "\r\n",
      other);

  EXPECT_THAT(read.rows,
              ElementsAre(knife("A;'a'", 7, 1017.5), knife("B", 12, {}, std::string("\"x\""))));
}

TEST(PackageRows, WithoutAHeaderHaveTheDescribedOrder) {
  DescribedResource headless = file();
  headless.has_header = false;
  headless.fields = {{.name = "cuts"}, {.name = "name"}};

  EXPECT_THAT(reading("1,A\n", headless).rows, ElementsAre(knife("A", 1)));
}

TEST(PackageRows, MayHaveMarkersOfTheirOwnForAField) {
  DescribedResource marked = file({"-"});
  marked.fields = {{.name = "note", .missing_values = std::vector<std::string>{"?"}}};

  EXPECT_THAT(reading("name,cuts,angle_deg,note\nA,1,-,-\nB,1,-,?\n", marked).rows,
              ElementsAre(knife("A", 1, {}, std::string("-")), knife("B", 1)));
}

TEST(PackageRows, KeepAnEmptyTextWhereATextMayNotBeMissing) {
  EXPECT_THAT(reading("name,cuts\n,1\n").rows, ElementsAre(knife("", 1)));
}

TEST(PackageRows, AreAllRefusedTogetherWithPlaceAndWhatWasFound) {
  EXPECT_THAT(
      problems("name,cuts,angle_deg\nA,1.5,sharp\n\"B\nb\",,NaN\nC,9223372036854775808,1e999\n"),
      ElementsAre(
          "knife.csv, line 2, column cuts: The cell holds “1.5”, where a whole number belongs.",
          "knife.csv, line 2, column angle_deg: The cell holds “sharp”, where a number belongs.",
          "knife.csv, line 4, column cuts: The cell is empty, where a value may not be missing.",
          "knife.csv, line 4, column angle_deg: The cell holds “NaN”, where a finite number "
          "belongs.",
          "knife.csv, line 5, column cuts: The cell holds “9223372036854775808”, which is too "
          "large for a whole number of 64 bits.",
          "knife.csv, line 5, column angle_deg: The cell holds “1e999”, which is too large, or too "
          "close to zero, for a double-precision number."));
}

TEST(PackageRows, DoNotTakeAnotherNotationForANumber) {
  for (const char* cell :
       {"1,5", "1 000", "0x1F", "1e3", "12 gf", "+-1", "--1", "1.", "½", "Infinity"}) {
    const std::string csv = "cuts,name\n\"" + std::string(cell) + "\",A\n";
    EXPECT_THAT(problems(csv), SizeIs(1)) << cell;
  }
}

TEST(PackageRows, AreRefusedWhereCellsAreTooManyOrTooFew) {
  EXPECT_THAT(problems("name,cuts\nA,1,2\nB\n"),
              ElementsAre("knife.csv, line 2: The row has 3 cells, the table has 2 columns.",
                          "knife.csv, line 3: The row has 1 cell, the table has 2 columns."));
}

TEST(PackageRows, AreRefusedWhereAQuoteIsBroken) {
  EXPECT_THAT(problems("name,cuts\n\"A\"x,1\nB,2\n\"C,3\n"),
              ElementsAre(HasSubstr("line 2: After the closing quote"),
                          HasSubstr("line 4: A quote is opened here and never closed")));
}

TEST(PackageRows, NeedTheColumnsThatMayNotBeMissing) {
  EXPECT_THAT(
      problems("Name,angle_deg\nA,1\n"),
      ElementsAre("knife.csv, line 1, column name: The column is not there, and it is needed.",
                  "knife.csv, line 1, column cuts: The column is not there, and it is needed."));
  EXPECT_THAT(problems("cuts,name,cuts\n1,A,1\n"),
              ElementsAre("knife.csv, line 1, column cuts: The column is there twice."));
  EXPECT_THAT(problems(""),
              ElementsAre("knife.csv: The file is empty; its first line names the columns."));
}

TEST(PackageRows, AreUtf8Text) {
  EXPECT_THAT(problems("name,cuts\nA,1\ncaf\xE9,1\n"),
              ElementsAre("knife.csv, line 3: The file is not UTF-8 text from here on."));
  EXPECT_THAT(problems(std::string_view("name,cuts\n\0,1\n", 14)),
              ElementsAre(HasSubstr("line 2: The file holds the character NUL")));
}

TEST(PackageRows, WithUnitsInNumbersAreNotGuessedAt) {
  DescribedResource with_units = file();
  with_units.fields = {{.name = "angle_deg", .type = "number", .is_bare_number = false}};

  EXPECT_THAT(problems("name,cuts,angle_deg\nA,1,17°\n", with_units),
              ElementsAre(HasSubstr("column angle_deg: The column holds more than bare numbers")));
}

TEST(PackageRows, OfAResourceWithAFaultAreRefusedForIt) {
  DescribedResource faulty = file();
  faulty.fault =
      base::Problem{.sentence = "The resource “knife” cannot be read: it is compressed."};

  EXPECT_THAT(problems("name,cuts\nA,1\n", faulty),
              ElementsAre("The resource “knife” cannot be read: it is compressed."));
}

TEST(PackageRows, NameTwoHundredProblemsAndCountTheRest) {
  std::string csv = "name,cuts\n";
  for (int i = 0; i < 1000; ++i) csv += "A,x\n";

  const auto sentences = problems(csv);

  EXPECT_THAT(sentences, SizeIs(201));
  EXPECT_EQ(sentences.back(), "And 800 more problems like these, not listed.");
}

TEST(PackageRows, ThatAreGoodAreHandedOnBesideBadOnes) {
  const auto read = reading("name,cuts\nA,x\nB,2\n");

  EXPECT_FALSE(read.result.has_value());
  EXPECT_THAT(read.rows, ElementsAre(knife("B", 2)));
}

}  // namespace
}  // namespace keenfall::exchange
