// Tables between programs: CSV files and a descriptor, datapackage.json, that says what is in them.
//
// Written and read as the open standard has it (Data Package, Tabular Data Resource, Table Schema
// and CSV Dialect of specs.frictionlessdata.io, version 1; tables by RFC 4180). What is written
// reads back to the letter: 64-bit integers, doubles bit for bit, every UTF-8 text without NUL,
// missing told from empty. Packages of other programs may have other delimiters, quotes, markers
// and orders of columns. Files, folders and digests are the caller's.
#pragma once

#include "base/result.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace keenfall::exchange {

// Missing, a whole number, a finite number or a text.
using PackageCell = std::variant<std::monostate, std::int64_t, double, std::string>;
using PackageRow = std::vector<PackageCell>;

enum class FieldType { integer, number, string };

struct PackageField {
  std::string name;
  FieldType type = FieldType::string;
  bool may_be_missing = false;
};

// A foreign key: `field` holds a value of `other_field` in `table`, or is missing.
struct PackageReference {
  std::string field;
  std::string table;  // the table's own name where rows refer to rows of the same table
  std::string other_field;
};

struct PackageTable {
  std::string name;  // small letters, digits, '.', '_' and '-'
  std::vector<PackageField> fields;
  std::vector<std::string> primary_key;
  std::vector<PackageReference> references;
};

// ---- Writing ----

// Hands every row to `use`, in order; the same rows each time it is called.
using EachRow = std::function<void(const std::function<void(const PackageRow&)>& use)>;

struct PackageCsv {
  std::string text;            // header first; lines end in LF
  std::string missing_marker;  // "" unless that could be taken for an empty text
  std::size_t row_count = 0;
};

// Calls `each_row` once or twice. Fails with the first cell that cannot be written: not of its
// field's type, missing where it may not be, not finite, or a text that is not UTF-8 or holds NUL.
[[nodiscard]] base::Result<PackageCsv> csv_of(const PackageTable& table, const EachRow& each_row);

struct PackageResource {
  PackageTable table;
  std::string path;  // relative to the descriptor, with '/'
  std::string missing_marker;
  std::size_t bytes = 0;
  std::string sha256_hex;
};

struct PackageAbout {
  std::string name;  // as a table's name
  std::string title;
  std::string description;
  std::string created;                                // UTC, ISO 8601: "2026-11-26T12:00:00Z"
  std::map<std::string, std::string> own_properties;  // by names the standard does not use

  bool operator==(const PackageAbout&) const = default;
};

// The text of datapackage.json. What is empty in `about` is left out; bytes that are not UTF-8
// become U+FFFD. Throws std::logic_error where names, paths or own properties are not as said
// above.
[[nodiscard]] std::string descriptor_of(const PackageAbout& about,
                                        std::span<const PackageResource> resources);

// ---- Reading ----

// A field as the descriptor states it.
struct DescribedField {
  std::string name;
  std::string type = "string";
  char decimal_mark = '.';
  char group_mark = '\0';                                    // '\0': digits are not grouped
  bool is_bare_number = true;                                // no unit, percent sign or the like
  std::optional<std::vector<std::string>> missing_values{};  // the table's, where not stated
};

struct DescribedResource {
  std::string name;
  std::string path;  // relative, inside the descriptor's folder
  std::optional<std::string> sha256_hex{};
  std::optional<std::size_t> bytes{};
  std::vector<std::string> missing_values = {""};
  char delimiter = ',';
  char quote = '"';     // '\0': none
  char comment = '\0';  // '\0': none
  bool has_header = true;
  bool skips_blanks_before_cells = false;
  std::vector<DescribedField> fields;
  // Why its rows cannot be read (they lie in the descriptor, it is no CSV ...). The path may then
  // be empty.
  std::optional<base::Problem> fault{};
};

struct DescribedPackage {
  PackageAbout about;
  std::vector<DescribedResource> resources;
};

// Fails when the text is not JSON or not a package, a resource has no name or another's, or a path
// leads out of the folder.
[[nodiscard]] base::Result<DescribedPackage> described_package(std::string_view json,
                                                               const std::string& file_name);

struct RowsRead {
  std::size_t row_count = 0;
  std::vector<std::string> unknown_columns;  // in the file, but not expected: not read
};

// Every row, in the expected order of fields, with the line it begins in. Columns are found by the
// header; one that is not there and may be missing is missing in every row. An empty text where a
// text may not be missing is an empty text. Fails with every problem (200 at most), each with file,
// line, column and what was found; good rows have gone to `use` all the same.
[[nodiscard]] base::ResultOrProblems<RowsRead> read_rows(
    const DescribedResource& resource,
    const PackageTable& expected,
    std::string_view csv,
    const std::function<void(const PackageRow& row, std::size_t line)>& use);

}  // namespace keenfall::exchange
