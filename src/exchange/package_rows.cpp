#include "exchange/data_package.h"
#include "exchange/delimited_text.h"
#include "exchange/package_cell.h"
#include "exchange/problem_list.h"
#include "exchange/text_file.h"
#include "exchange/text_lines.h"

#include "base/require.h"

#include <algorithm>
#include <utility>

namespace keenfall::exchange {

namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

std::string name_of_header(const Cell& cell, const PackageTable& expected) {
  const auto is_expected = [&expected](std::string_view name) {
    return std::ranges::find(expected.fields, name, &PackageField::name) != expected.fields.end();
  };
  return std::string(is_expected(cell.text) ? cell.text : trimmed(cell.text));
}

// A column that is expected, and where it stands in the file (nullopt: nowhere).
struct PlacedColumn {
  PackageColumn column;
  std::optional<std::size_t> at;
};

class PackageRowReading {
 public:
  PackageRowReading(const DescribedResource& resource, const PackageTable& expected)
      : resource_(resource), expected_(expected) {
    problems_.begin_file(resource.path);
  }

  base::ResultOrProblems<RowsRead> read(
      std::string_view csv, const std::function<void(const PackageRow&, std::size_t)>& use) && {
    if (csv.starts_with(kByteOrderMark)) csv.remove_prefix(kByteOrderMark.size());
    if (resource_.fault) {
      problems_.add_general(*resource_.fault);
    } else if (is_text(csv)) {
      read_text(csv, use);
    }
    if (!problems_.empty()) return tl::unexpected(std::move(problems_).sorted());
    return std::move(read_);
  }

 private:
  bool is_text(std::string_view csv) {
    const std::size_t good = std::min(utf8_byte_count(csv), csv.find('\0'));
    if (good >= csv.size()) return true;
    refuse(line_at(csv, good),
           "",
           csv[good] == '\0'
               ? "The file holds the character NUL, so it is not text, or it is damaged."
               : "The file is not UTF-8 text from here on.");
    return false;
  }

  void read_text(std::string_view csv,
                 const std::function<void(const PackageRow&, std::size_t)>& use) {
    DelimitedReader reader(
        csv,
        DelimitedStyle{.delimiter = resource_.delimiter,
                       .quote = resource_.quote,
                       .comment = resource_.comment,
                       .to_the_letter = true,
                       .skips_blanks_before_cells = resource_.skips_blanks_before_cells});
    if (!read_header(reader)) return;
    while (const auto record = reader.next()) {
      const std::size_t before = problem_count_;
      read_record(*record);
      if (problem_count_ > before) continue;
      ++read_.row_count;
      use(row_, record->line);
    }
  }

  bool read_header(DelimitedReader& reader) {
    std::vector<std::string> names;
    if (resource_.has_header) {
      const auto record = reader.next();
      if (!record) {
        refuse(0, "", "The file is empty; its first line names the columns.");
        return false;
      }
      if (record->fault) {
        refuse(record->fault->cell.line, "", record->fault->sentence);
        return false;
      }
      for (const Cell& cell : record->cells) names.push_back(name_of_header(cell, expected_));
      header_line_ = record->line;
    } else {
      for (const DescribedField& field : resource_.fields) names.push_back(field.name);
    }
    place_columns(names);
    return problem_count_ == 0;
  }

  void place_columns(const std::vector<std::string>& names) {
    column_count_ = names.size();
    for (const PackageField& field : expected_.fields) {
      const auto found = std::ranges::find(names, field.name);
      std::optional<std::size_t> at;
      if (found != names.end()) {
        at = static_cast<std::size_t>(found - names.begin());
        if (std::find(found + 1, names.end(), field.name) != names.end()) {
          refuse(header_line_, field.name, "The column is there twice.");
        }
      } else if (!field.may_be_missing) {
        refuse(header_line_,
               field.name,
               "The column is not there, and it is needed.",
               base::ProblemKind::missing);
      }
      columns_.push_back({.column = column_of(field), .at = at});
    }
    for (const std::string& name : names) {
      const bool is_known =
          std::ranges::find(expected_.fields, name, &PackageField::name) != expected_.fields.end();
      if (!is_known && !name.empty()) read_.unknown_columns.push_back(name);
    }
    row_.resize(columns_.size());
  }

  PackageColumn column_of(const PackageField& field) {
    PackageColumn column{.field = field, .missing_values = resource_.missing_values};
    const auto stated = std::ranges::find(resource_.fields, field.name, &DescribedField::name);
    if (stated == resource_.fields.end()) return column;
    if (!stated->is_bare_number && field.type != FieldType::string) {
      refuse(0,
             field.name,
             "The column holds more than bare numbers, says the package; only those are read.");
    }
    column.decimal_mark = stated->decimal_mark;
    column.group_mark = stated->group_mark;
    if (stated->missing_values) column.missing_values = *stated->missing_values;
    return column;
  }

  void read_record(const Record& record) {
    if (record.fault) return refuse(record.fault->cell.line, "", record.fault->sentence);
    if (record.cells.size() != column_count_) {
      return refuse(record.line,
                    "",
                    "The row has " + std::to_string(record.cells.size()) +
                        (record.cells.size() == 1 ? " cell" : " cells") + ", the table has " +
                        std::to_string(column_count_) +
                        (column_count_ == 1 ? " column." : " columns."));
    }
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      const PlacedColumn& placed = columns_[i];
      if (!placed.at) continue;
      const Cell& cell = record.cells[*placed.at];
      PackageCellRead read = package_cell(cell.text, placed.column);
      if (read.fault.empty()) {
        row_[i] = std::move(read.value);
      } else {
        refuse_cell(cell, placed.column.field.name, read.fault);
      }
    }
  }

  void refuse_cell(const Cell& cell, const std::string& column, const std::string& why) {
    const std::string what =
        cell.text.empty() ? "The cell is empty, " : "The cell holds " + in_quotes(cell.text) + ", ";
    refuse(
        cell.line, column, what + why + ".", base::ProblemKind::bad_value, std::string(cell.text));
  }

  void refuse(std::size_t line,
              const std::string& column,
              std::string sentence,
              base::ProblemKind kind = base::ProblemKind::bad_value,
              std::string found = "") {
    ++problem_count_;
    problems_.add({.file = problems_.current_file(), .line = line},
                  {.kind = kind,
                   .sentence = std::move(sentence),
                   .place = {.column = column, .found = std::move(found)}});
  }

  const DescribedResource& resource_;
  const PackageTable& expected_;
  ProblemList problems_;
  std::size_t problem_count_ = 0;
  std::size_t header_line_ = 1;
  std::size_t column_count_ = 0;
  std::vector<PlacedColumn> columns_;
  PackageRow row_;
  RowsRead read_;
};

}  // namespace

base::ResultOrProblems<RowsRead> read_rows(
    const DescribedResource& resource,
    const PackageTable& expected,
    std::string_view csv,
    const std::function<void(const PackageRow& row, std::size_t line)>& use) {
  base::require(!expected.fields.empty(), "a table has fields");
  return PackageRowReading(resource, expected).read(csv, use);
}

}  // namespace keenfall::exchange
