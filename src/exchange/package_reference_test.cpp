#include "exchange/data_package.h"
#include "exchange/text_file.h"

#include <gtest/gtest.h>

#include <utility>

namespace keenfall::exchange {
namespace {

// What other programs made of this package, and how to ask them again, is in its README.md.
constexpr const char* kFolder = KEENFALL_SOURCE_DIR "/tests/reference/data_package/";

struct Written {
  PackageTable table;
  std::vector<PackageRow> rows;
  std::string sha256_hex;  // by the program sha256sum
};

std::vector<Written> odd_tables() {
  using Whole = std::int64_t;
  using Text = std::string;
  const PackageTable trial{.name = "trial",
                           .fields = {{.name = "name"}, {.name = "condition"}, {.name = "why"}},
                           .primary_key = {"name", "condition"}};
  const PackageTable reading{
      .name = "reading",
      .fields = {{.name = "place", .type = FieldType::integer},
                 {.name = "value", .type = FieldType::number},
                 {.name = "angle", .type = FieldType::number, .may_be_missing = true},
                 {.name = "note", .may_be_missing = true},
                 {.name = "after", .type = FieldType::integer, .may_be_missing = true},
                 {.name = "trial"}},
      .primary_key = {"place"},
      .references = {{.field = "after", .table = "reading", .other_field = "place"},
                     {.field = "trial", .table = "trial", .other_field = "name"}}};
  const PackageTable lonely{.name = "lonely", .fields = {{.name = "only", .may_be_missing = true}}};
  const std::vector<PackageRow> readings = {
      {Whole{1}, 0.1, {}, Text("two\r\nlines"), {}, Text("A")},
      {Whole{2}, 1e300, -0.0, Text(), Whole{1}, Text(" b, \"c\"")},
      {Whole{3}, 5e-324, 1.5, {}, Whole{1}, Text("A")},
      {Whole{4}, -17.0, 1e22, Text("#no comment"), Whole{3}, Text("A")},
      {Whole{5}, 1.0 / 3.0, 1.5, Text("\ttab,\"quote\" é𝄞 \n\n;'='"), Whole{3}, Text("A")}};
  return {{trial,
           {{Text("A"), Text(), Text()}, {Text(" b, \"c\""), Text("#x"), Text("NULL")}},
           "f84ad7bb158f117a4092995166b88b2c8aa6b7e56b290724607b1efdfb5f130d"},
          {reading, readings, "845a4ef9ef8e8441b6e9a9dd0473eec3075db9aea9eff3fd4a7d36300162fa58"},
          {lonely,
           {{PackageCell()}, {Text("x")}, {PackageCell()}},
           "335230c087dd5887da903703c119bcd55d35bee80c415e07d95628ae29c8bf9b"}};
}

PackageCsv csv_of_rows(const Written& written) {
  return csv_of(written.table,
                [&written](const std::function<void(const PackageRow&)>& use) {
                  for (const PackageRow& row : written.rows) use(row);
                })
      .value();
}

TEST(ReferencePackage, IsWrittenAsOtherProgramsFoundItValid) {
  std::vector<PackageResource> resources;
  for (const Written& written : odd_tables()) {
    PackageCsv csv = csv_of_rows(written);
    const std::string path = "data/" + written.table.name + ".csv";
    EXPECT_EQ(csv.text, read_text_file(kFolder + path));
    resources.push_back({.table = written.table,
                         .path = path,
                         .missing_marker = std::move(csv.missing_marker),
                         .bytes = csv.text.size(),
                         .sha256_hex = written.sha256_hex});
  }

  EXPECT_EQ(descriptor_of({.name = "odd-texts",
                           .title = "Odd",
                           .created = "2026-11-26T12:00:00Z",
                           .own_properties = {{"schema_version", "1"}}},
                          resources),
            read_text_file(std::string(kFolder) + "datapackage.json"));
}

TEST(ReferencePackage, IsReadAsItWasWritten) {
  const std::string descriptor = read_text_file(std::string(kFolder) + "datapackage.json").value();
  const auto package = described_package(descriptor, "datapackage.json");

  const auto tables = odd_tables();
  for (std::size_t i = 0; i < tables.size(); ++i) {
    const DescribedResource& resource = package->resources.at(i);
    std::vector<PackageRow> rows;
    const std::string csv = read_text_file(kFolder + resource.path).value();
    const auto read =
        read_rows(resource, tables[i].table, csv, [&rows](const PackageRow& row, std::size_t) {
          rows.push_back(row);
        });
    EXPECT_EQ(read->row_count, rows.size());
    EXPECT_EQ(rows, tables[i].rows) << resource.name;
  }
}

}  // namespace
}  // namespace keenfall::exchange
