#include "exchange/data_package.h"
#include "exchange/text_file.h"
#include "exchange/text_lines.h"

#include "base/plain_number.h"
#include "base/require.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace keenfall::exchange {

namespace {

// Of the markers NULL, NULL_, NULL__ ... one is not among finitely many texts.
constexpr std::string_view kMarkerStem = "NULL";

// RFC 4180 asks for quotes around delimiters, quotes and line ends. Blanks at the ends and a first
// '#' are quoted for programs that trim cells or pass over comments, a byte order mark because at
// the beginning of a file it would be taken away.
bool must_be_quoted(std::string_view text) {
  if (text.empty()) return false;
  const auto is_blank = [](char c) { return c == ' ' || c == '\t'; };
  return text.find_first_of("\",\r\n") != std::string_view::npos || is_blank(text.front()) ||
         is_blank(text.back()) || text.front() == '#' || text.starts_with("\xEF\xBB\xBF");
}

bool is_field_name(std::string_view name) {
  return utf8_byte_count(name) == name.size() && name.find('\0') == std::string_view::npos;
}

void append_quoted(std::string& csv, std::string_view text) {
  csv += '"';
  for (const char c : text) {
    if (c == '"') csv += '"';
    csv += c;
  }
  csv += '"';
}

// One pass over the rows with one marker; also finds out which other markers would do.
class PackageCsvWriting {
 public:
  PackageCsvWriting(const PackageTable& table, std::string marker)
      : table_(table), csv_{.missing_marker = std::move(marker)} {
    for (const PackageField& field : table.fields) append_cell(field.name, &field);
    end_row();
  }

  void add(const PackageRow& row) {
    if (problem_) return;
    ++csv_.row_count;
    base::require(row.size() == table_.fields.size(), "a row has a cell for every field");
    for (std::size_t i = 0; i < row.size() && !problem_; ++i) add_cell(table_.fields[i], row[i]);
    end_row();
  }

  [[nodiscard]] bool is_marker_ambiguous() const { return is_marker_ambiguous_; }

  [[nodiscard]] std::string unambiguous_marker() const {
    std::string marker(kMarkerStem);
    while (texts_like_markers_.contains(marker)) marker += '_';
    return marker;
  }

  [[nodiscard]] base::Result<PackageCsv> result() && {
    if (problem_) return base::failed(std::move(*problem_));
    return std::move(csv_);
  }

 private:
  void add_cell(const PackageField& field, const PackageCell& cell) {
    if (std::holds_alternative<std::monostate>(cell)) {
      if (!field.may_be_missing) return refuse(field, "is missing, and may not be");
      return append_cell(csv_.missing_marker, &field);
    }
    switch (field.type) {
      case FieldType::integer:
        if (const auto* number = std::get_if<std::int64_t>(&cell)) {
          return append_cell(std::to_string(*number), &field);
        }
        return refuse(field, "is not a whole number");
      case FieldType::number:
        if (const auto* number = std::get_if<double>(&cell)) return add_number(field, *number);
        return refuse(field, "is not a number");
      case FieldType::string:
        if (const auto* text = std::get_if<std::string>(&cell)) return add_text(field, *text);
        return refuse(field, "is not a text");
    }
  }

  void add_number(const PackageField& field, double number) {
    if (!std::isfinite(number)) return refuse(field, "is not a finite number");
    append_cell(base::plain_number(number), &field);
  }

  void add_text(const PackageField& field, const std::string& text) {
    if (utf8_byte_count(text) < text.size()) {
      return refuse(field,
                    "is " + in_quotes(text.substr(0, utf8_byte_count(text))) +
                        " and then a byte that is not UTF-8 text");
    }
    if (text.find('\0') != std::string_view::npos) {
      return refuse(field,
                    "is " + in_quotes(text.substr(0, text.find('\0'))) +
                        " and then the character NUL, which no CSV file can hold");
    }
    if (text.starts_with(kMarkerStem)) texts_like_markers_.insert(text);
    // A key may not be missing, and other programs take every marker for missing.
    const bool is_key =
        std::ranges::find(table_.primary_key, field.name) != table_.primary_key.end();
    if (text == csv_.missing_marker && (field.may_be_missing || is_key))
      is_marker_ambiguous_ = true;
    append_cell(text, &field);
  }

  // `field` tells whether a delimiter goes before.
  void append_cell(std::string_view text, const PackageField* field) {
    if (field != &table_.fields.front()) csv_.text += ',';
    // A line without a byte would be no row to most programs.
    const bool is_whole_line_empty = text.empty() && table_.fields.size() == 1;
    if (must_be_quoted(text) || is_whole_line_empty) {
      append_quoted(csv_.text, text);
    } else {
      csv_.text += text;
    }
  }

  void end_row() { csv_.text += '\n'; }

  void refuse(const PackageField& field, const std::string& what) {
    problem_ = base::Problem{.sentence = "In row " + std::to_string(csv_.row_count) +
                                         " of the table " + table_.name + ", " + field.name + " " +
                                         what + ": it cannot be written to a data package.",
                             .place = {.column = field.name}};
  }

  const PackageTable& table_;
  PackageCsv csv_;
  bool is_marker_ambiguous_ = false;
  std::set<std::string> texts_like_markers_;
  std::optional<base::Problem> problem_;
};

}  // namespace

base::Result<PackageCsv> csv_of(const PackageTable& table, const EachRow& each_row) {
  base::require(!table.fields.empty(), "a table has fields");
  base::require(std::ranges::all_of(table.fields, is_field_name, &PackageField::name),
                "a field's name is UTF-8 text without NUL");
  PackageCsvWriting plain(table, "");
  each_row([&plain](const PackageRow& row) { plain.add(row); });
  if (!plain.is_marker_ambiguous()) return std::move(plain).result();
  PackageCsvWriting marked(table, plain.unambiguous_marker());
  each_row([&marked](const PackageRow& row) { marked.add(row); });
  return std::move(marked).result();
}

}  // namespace keenfall::exchange
