#include "exchange/data_package.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <bit>
#include <cmath>
#include <limits>

namespace keenfall::exchange {
namespace {

EachRow each_of(const std::vector<PackageRow>& rows) {
  return [&rows](const std::function<void(const PackageRow&)>& use) {
    for (const PackageRow& row : rows) use(row);
  };
}

// Doubles by their bits, so that 0 and -0 differ.
std::string shown(const PackageCell& cell) {
  if (const auto* number = std::get_if<std::int64_t>(&cell)) return "i" + std::to_string(*number);
  if (const auto* text = std::get_if<std::string>(&cell)) return "t" + *text;
  if (const auto* number = std::get_if<double>(&cell)) {
    return "r" + std::to_string(std::bit_cast<std::uint64_t>(*number));
  }
  return "missing";
}

std::vector<std::vector<std::string>> shown(const std::vector<PackageRow>& rows) {
  std::vector<std::vector<std::string>> all;
  for (const PackageRow& row : rows) {
    all.emplace_back();
    for (const PackageCell& cell : row) all.back().push_back(shown(cell));
  }
  return all;
}

// Written, described, and read as the description says.
std::vector<PackageRow> there_and_back(const PackageTable& table,
                                       const std::vector<PackageRow>& rows) {
  const auto csv = csv_of(table, each_of(rows));
  if (!csv) throw std::runtime_error(base::in_words(csv.error()));
  const std::array resources = {PackageResource{.table = table,
                                                .path = "data/" + table.name + ".csv",
                                                .missing_marker = csv->missing_marker,
                                                .bytes = csv->text.size(),
                                                .sha256_hex = std::string(64, '0')}};
  const auto package =
      described_package(descriptor_of({.name = "there-and-back"}, resources), "datapackage.json");
  if (!package) throw std::runtime_error(base::in_words(package.error()));
  std::vector<PackageRow> back;
  const auto read = read_rows(
      package->resources.at(0), table, csv->text, [&back](const PackageRow& row, std::size_t) {
        back.push_back(row);
      });
  if (!read) throw std::runtime_error(base::in_words(read.error().front()));
  return back;
}

PackageTable table_of(FieldType type, bool may_be_missing) {
  return {.name = "t", .fields = {{.name = "a", .type = type, .may_be_missing = may_be_missing}}};
}

PackageRow text_row(const char* text) { return {std::string(text)}; }

std::string any_text() {
  const auto pieces =
      *rc::gen::container<std::vector<std::string>>(rc::gen::element<std::string>("a",
                                                                                  "NULL",
                                                                                  "_",
                                                                                  ",",
                                                                                  ";",
                                                                                  "\"",
                                                                                  "\r",
                                                                                  "\n",
                                                                                  "\r\n",
                                                                                  " ",
                                                                                  "\t",
                                                                                  "#",
                                                                                  "0",
                                                                                  "1e3",
                                                                                  "é",
                                                                                  "\xC2\xA0",
                                                                                  "\xEF\xBB\xBF",
                                                                                  "\x01",
                                                                                  "\x7F",
                                                                                  "𝄞",
                                                                                  "'",
                                                                                  "=",
                                                                                  "\\"));
  std::string text;
  for (const std::string& piece : pieces) text += piece;
  return text;
}

double any_finite_number() {
  const auto number = std::bit_cast<double>(*rc::gen::arbitrary<std::uint64_t>());
  return std::isfinite(number) ? number : -0.0;
}

PackageCell any_cell(const PackageField& field) {
  if (field.may_be_missing && *rc::gen::inRange(0, 3) == 0) return {};
  switch (field.type) {
    case FieldType::integer:
      return *rc::gen::arbitrary<std::int64_t>();
    case FieldType::number:
      return any_finite_number();
    case FieldType::string:
      return any_text();
  }
  return {};
}

PackageTable any_table() {
  PackageTable table{.name = "any", .fields = {}};
  const int field_count = *rc::gen::inRange(1, 6);
  for (int i = 0; i < field_count; ++i) {
    table.fields.push_back(
        {.name = "field " + std::to_string(i),
         .type = *rc::gen::element(FieldType::integer, FieldType::number, FieldType::string),
         .may_be_missing = *rc::gen::arbitrary<bool>()});
  }
  if (*rc::gen::arbitrary<bool>()) table.primary_key = {"field 0"};
  return table;
}

RC_GTEST_PROP(DataPackage, ReadsBackEveryTableToTheLetter, ()) {
  const PackageTable table = any_table();
  std::vector<PackageRow> rows(*rc::gen::inRange<std::size_t>(0, 12));
  for (PackageRow& row : rows) {
    for (const PackageField& field : table.fields) row.push_back(any_cell(field));
  }

  RC_ASSERT(shown(there_and_back(table, rows)) == shown(rows));
}

TEST(DataPackage, KeepsWholeNumbersOf64Bits) {
  const std::vector<PackageRow> rows = {{std::numeric_limits<std::int64_t>::min()},
                                        {std::numeric_limits<std::int64_t>::max()},
                                        {std::int64_t{9007199254740993}}};  // 2^53 + 1

  EXPECT_EQ(there_and_back(table_of(FieldType::integer, false), rows), rows);
}

TEST(DataPackage, KeepsNumbersBitForBit) {
  using Limits = std::numeric_limits<double>;
  const std::vector<PackageRow> rows = {
      {-0.0}, {0.1}, {1.0 / 3.0}, {Limits::max()}, {Limits::denorm_min()}, {-1e300}, {5e-324}};

  EXPECT_EQ(shown(there_and_back(table_of(FieldType::number, false), rows)), shown(rows));
}

TEST(DataPackage, KeepsAByteOrderMarkThatBelongsToAName) {
  const PackageTable table{.name = "t",
                           .fields = {{.name = "\xEF\xBB\xBF"
                                               "a"}}};

  EXPECT_EQ(there_and_back(table, {text_row("x")}), (std::vector<PackageRow>{text_row("x")}));
}

TEST(DataPackage, TellsMissingFromEmptyText) {
  const std::vector<PackageRow> rows = {text_row(""),
                                        {PackageCell()},
                                        text_row("NULL"),
                                        text_row("NULL_"),
                                        text_row("\n"),
                                        text_row("#")};

  EXPECT_EQ(there_and_back(table_of(FieldType::string, true), rows), rows);
}

TEST(DataPackage, WritesNothingForMissingUnlessThatCouldBeAnEmptyText) {
  const PackageTable table = table_of(FieldType::string, true);

  EXPECT_EQ(csv_of(table, each_of({{PackageCell()}, text_row("x")}))->missing_marker, "");
  EXPECT_EQ(csv_of(table, each_of({{PackageCell()}, text_row("")}))->missing_marker, "NULL");
  EXPECT_EQ(csv_of(table, each_of({text_row("NULL"), text_row("")}))->missing_marker, "NULL_");
  EXPECT_EQ(csv_of(table_of(FieldType::string, false), each_of({text_row("")}))->missing_marker,
            "");
}

// Other programs take the marker for missing also where the descriptor says that nothing is, and
// refuse a key with a missing part (Table Schema, "primaryKey").
TEST(DataPackage, WritesAnEmptyTextInAKeySoThatItIsNotTakenForMissing) {
  PackageTable table = table_of(FieldType::string, false);
  table.primary_key = {"a"};

  EXPECT_EQ(csv_of(table, each_of({text_row("")}))->missing_marker, "NULL");
}

// RFC 4180, section 2, rules 5 to 7.
TEST(DataPackage, WritesCsvAsRfc4180HasIt) {
  const PackageTable table{
      .name = "t",
      .fields = {{.name = "n", .type = FieldType::integer},
                 {.name = "x", .type = FieldType::number, .may_be_missing = true},
                 {.name = "words, spoken"}}};
  const std::vector<PackageRow> rows = {{std::int64_t{1}, 0.5, std::string("b\"bb")},
                                        {std::int64_t{2}, PackageCell(), std::string("b\r\nbb")},
                                        {std::int64_t{3}, 1e30, std::string(" blank")}};

  EXPECT_EQ(csv_of(table, each_of(rows))->text,
            "n,x,\"words, spoken\"\n1,0.5,\"b\"\"bb\"\n2,,\"b\r\nbb\"\n3,1e+30,\" blank\"\n");
}

TEST(DataPackage, WritesATableWithoutRowsAsItsHeader) {
  EXPECT_EQ(csv_of(table_of(FieldType::string, false), each_of({}))->text, "a\n");
  EXPECT_TRUE(there_and_back(table_of(FieldType::string, false), {}).empty());
}

std::string refusal(const PackageTable& table, const PackageCell& cell) {
  const std::vector<PackageRow> rows = {{cell}};
  return csv_of(table, each_of(rows)).error().sentence;
}

TEST(DataPackage, RefusesToWriteWhatNoCsvFileCanHold) {
  const PackageTable texts = table_of(FieldType::string, false);

  EXPECT_EQ(
      refusal(texts, std::string("caf\xE9")),
      "In row 1 of the table t, a is “caf” and then a byte that is not UTF-8 text: it cannot be "
      "written to a data package.");
  EXPECT_EQ(
      refusal(texts, std::string("x\0y", 3)),
      "In row 1 of the table t, a is “x” and then the character NUL, which no CSV file can hold: "
      "it cannot be written to a data package.");
}

TEST(DataPackage, RefusesToWriteACellThatIsNotOfItsField) {
  const PackageTable numbers = table_of(FieldType::number, false);
  constexpr double kInfinity = std::numeric_limits<double>::infinity();

  EXPECT_THAT(refusal(numbers, kInfinity), testing::HasSubstr("a is not a finite number"));
  EXPECT_THAT(refusal(numbers, std::nan("")), testing::HasSubstr("a is not a finite number"));
  EXPECT_THAT(refusal(numbers, PackageCell()), testing::HasSubstr("a is missing, and may not be"));
  EXPECT_THAT(refusal(numbers, std::int64_t{1}), testing::HasSubstr("a is not a number"));
  EXPECT_THAT(refusal(table_of(FieldType::integer, true), 1.0),
              testing::HasSubstr("a is not a whole number"));
  EXPECT_THAT(refusal(table_of(FieldType::string, true), 1.0),
              testing::HasSubstr("a is not a text"));
}

TEST(DataPackage, ExpectsNamesThatACsvFileCanHold) {
  const PackageTable table{.name = "t", .fields = {{.name = std::string("a\0", 2)}}};

  EXPECT_THROW((void)csv_of(table, each_of({})), std::logic_error);
}

TEST(DataPackage, ExpectsARowToHaveACellForEveryField) {
  EXPECT_THROW((void)csv_of(table_of(FieldType::string, true), each_of({{}})), std::logic_error);
}

}  // namespace
}  // namespace keenfall::exchange
