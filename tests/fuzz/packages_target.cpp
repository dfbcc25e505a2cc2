// Data packages: a descriptor and CSV files, of another program or of no program at all.
//
// The input's part datapackage.json is the descriptor, the others are files by their paths
// (input_parts.h). Each resource is read by the fields it states. What was read is written, and
// must read back the same.
#include "exchange/data_package.h"
#include "fuzz_target.h"
#include "input_parts.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cstdlib>
#include <set>
#include <string>

namespace {

using namespace keenfall::exchange;

constexpr std::size_t kMostRowsWritten = 1000;

// Of a field's place, so that each table has both.
bool may_be_missing(std::size_t place) { return place % 3 != 0; }

PackageTable table_stated_by(const DescribedResource& resource) {
  PackageTable table{.name = "stated", .fields = {}, .primary_key = {}, .references = {}};
  std::set<std::string> names;
  for (const DescribedField& field : resource.fields) {
    const bool is_writable = field.name.find('\0') == std::string::npos;
    if (!is_writable || !names.insert(field.name).second) continue;
    const FieldType type = field.type == "integer"  ? FieldType::integer
                           : field.type == "number" ? FieldType::number
                                                    : FieldType::string;
    const bool is_missing_allowed = may_be_missing(table.fields.size());
    table.fields.push_back({field.name, type, is_missing_allowed});
  }
  return table;
}

bool is_same(const PackageCell& one, const PackageCell& other) {
  const auto* number = std::get_if<double>(&one);
  const auto* other_number = std::get_if<double>(&other);
  if (number == nullptr || other_number == nullptr) return one == other;
  return std::bit_cast<std::uint64_t>(*number) == std::bit_cast<std::uint64_t>(*other_number);
}

void must_be(bool condition) {
  if (!condition) std::abort();
}

void must_read_back(const PackageTable& table, const std::vector<PackageRow>& rows) {
  const auto csv = csv_of(table, [&rows](const std::function<void(const PackageRow&)>& use) {
    for (const PackageRow& row : rows) use(row);
  });
  must_be(csv.has_value());
  const std::array resources = {PackageResource{.table = table,
                                                .path = "stated.csv",
                                                .missing_marker = csv->missing_marker,
                                                .bytes = csv->text.size(),
                                                .sha256_hex = std::string(64, '0')}};
  const std::string descriptor = descriptor_of({.name = "again"}, resources);
  const auto package = described_package(descriptor, "datapackage.json");
  must_be(package.has_value());
  std::size_t place = 0;
  const auto read = read_rows(
      package->resources.at(0), table, csv->text, [&](const PackageRow& row, std::size_t) {
        must_be(place < rows.size() && std::ranges::equal(row, rows[place], is_same));
        ++place;
      });
  must_be(read.has_value() && place == rows.size());
}

void read_as_stated(const DescribedResource& resource, std::string_view csv) {
  const PackageTable table = table_stated_by(resource);
  if (table.fields.empty()) return;
  std::vector<PackageRow> rows;
  const auto read = read_rows(resource, table, csv, [&rows](const PackageRow& row, std::size_t) {
    if (rows.size() < kMostRowsWritten) rows.push_back(row);
  });
  if (!read) {
    must_be(!read.error().empty());
    for (const auto& problem : read.error()) (void)keenfall::base::in_words(problem);
  }
  must_read_back(table, rows);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const auto parts = keenfall::fuzz::parts_of_input(keenfall::fuzz::as_text(bytes, size));
  for (const auto& descriptor : parts) {
    if (descriptor.name != "datapackage.json") continue;
    const auto package = described_package(descriptor.content, descriptor.name);
    if (!package) {
      (void)keenfall::base::in_words(package.error());
      continue;
    }
    for (const DescribedResource& resource : package->resources) {
      for (const auto& part : parts) {
        if (part.name == resource.path || resource.fault) read_as_stated(resource, part.content);
      }
    }
  }
  return 0;
}
