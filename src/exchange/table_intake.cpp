#include "exchange/table_intake.h"

#include "exchange/delimited_text.h"
#include "exchange/kind_definition.h"
#include "exchange/text_file.h"
#include "exchange/text_lines.h"

#include <functional>
#include <utility>

namespace keenfall::exchange {

namespace {

std::string list_of_texts(const std::vector<std::string>& texts) {
  std::string list;
  for (const std::string& text : texts) list += (list.empty() ? "" : ", ") + excerpt(text);
  return list;
}

base::Problem without_separator(std::string_view text) {
  if (trimmed(text).empty()) {
    return {.kind = base::ProblemKind::unsuitable_data,
            .sentence = "The file is empty.",
            .accepted =
                "a header line with blade, medium, run, cuts and reading, and a row for each "
                "reading"};
  }
  return {.kind = base::ProblemKind::missing,
          .sentence =
              "No comma, semicolon or tab separates columns in the first line, so no table "
              "can be made out.",
          .place = {.line = 1, .found = excerpt(text.substr(0, text.find_first_of("\r\n")))},
          .accepted = "a header line such as blade,medium,run,cuts,reading"};
}

base::Problem too_many_rows(std::size_t line) {
  return {.kind = base::ProblemKind::too_large,
          .sentence = "The tables have more than 5,000,000 rows; no more are taken in.",
          .place = {.line = line},
          .accepted = "fewer rows, or one kind of reading at a time"};
}

}  // namespace

TableIntake::TableIntake(const TableOptions& options)
    : options_(options), builder_(options, problems_) {
  check_options();
}

void TableIntake::check_options() {
  const std::string& kind = options_.default_kind;
  if (kind.empty() || find_kind(kind, options_.defined_kinds) != nullptr) return;
  problems_.add_general(
      {.kind = base::ProblemKind::unknown_name,
       .sentence = quoted(kind) + " is no kind of reading known here.",
       .place = {.column = "--kind", .found = excerpt(kind)},
       .accepted = list_of_kinds(options_.defined_kinds) + ", or your own by --define-kind"});
}

void TableIntake::report(base::Problem problem) {
  const std::size_t line = problem.place.line.value_or(0);
  problems_.add({problems_.current_file(), line}, std::move(problem));
}

void TableIntake::take_file(const std::string& path) {
  problems_.begin_file(path);
  const auto bytes = read_text_file(path);
  if (!bytes) return report(bytes.error());
  take_content(*bytes, path);
}

void TableIntake::take_bytes(std::string_view bytes, const std::string& file_name) {
  problems_.begin_file(file_name);
  take_content(bytes, file_name);
}

void TableIntake::take_content(std::string_view bytes, const std::string& file_name) {
  const std::size_t hash = std::hash<std::string_view>{}(bytes);
  const auto [same, is_new] = file_with_hash_.emplace(hash, file_name);
  if (!is_new) {
    return report(
        {.kind = base::ProblemKind::conflicting,
         .sentence = "This table is given twice: its content is that of " + same->second + "."});
  }
  const auto text = text_of(bytes, file_name);
  if (!text) return report(text.error());
  const auto delimiter = recognise_delimiter(*text);
  if (!delimiter) return report(without_separator(*text));
  take_text(*text, *delimiter);
}

void TableIntake::take_text(std::string_view text, char delimiter) {
  DelimitedReader reader(text, delimiter);
  const auto header = reader.next();
  if (!header || header->fault) {
    return report({.sentence = header ? header->fault->sentence : "The table has no header line.",
                   .place = {.line = header ? header->fault->cell.line : 1}});
  }
  auto columns = match_columns(*header, options_.columns, problems_);
  if (!columns) return;
  const auto mark = decimal_mark_of(text, delimiter, *columns);
  if (!mark) return;
  const RowFormat format{.columns = std::move(*columns), .delimiter = delimiter, .mark = *mark};
  const std::size_t rows_before = row_count_;
  while (const auto record = reader.next()) {
    if (++row_count_ > kMostRows) return report(too_many_rows(record->line));
    if (const auto row = read_row(*record, format, problems_)) builder_.add(*row, format.columns);
  }
  remark_on(format.columns, reader);
  if (row_count_ > rows_before) return;
  report({.kind = base::ProblemKind::unsuitable_data,
          .sentence = reader.comment_count() == 0
                          ? "The table has a header but no rows."
                          : "The table has a header, but all other rows start with # and so are "
                            "comments. Put the cell in quotes if the # belongs to it.",
          .accepted = "a row for each reading"});
}

std::optional<DecimalMark> TableIntake::decimal_mark_of(std::string_view text,
                                                        char delimiter,
                                                        const MatchedColumns& columns) {
  if (options_.decimal_mark != DecimalMark::decide) return options_.decimal_mark;
  if (delimiter == ',') return DecimalMark::point;
  DelimitedReader reader(text, delimiter);
  DecimalTally tally;
  const auto header = reader.next();
  while (const auto record = reader.next()) {
    for (const ColumnDefinition& definition : column_definitions()) {
      const auto position = columns.positions[index_of(definition.column)];
      if (definition.content != CellContent::number || !position) continue;
      if (*position >= record->cells.size()) continue;
      const Cell& cell = record->cells[*position];
      tally.add(cell.text, cell.line, columns.header_of(definition.column));
    }
  }
  const DecimalMark mark = tally.decision();
  if (mark != DecimalMark::decide) return mark;
  report(
      {.kind = base::ProblemKind::conflicting,
       .sentence = quoted(tally.ambiguous()->text) +
                   " may mean a decimal fraction or a number of thousands, and no other number "
                   "of the table tells which. Write it so that it is clear: with another zero at "
                   "the end (1,2340), or without the comma (1234).",
       .place = {.line = tally.ambiguous()->line,
                 .column = tally.ambiguous()->column,
                 .found = excerpt(tally.ambiguous()->text)},
       .accepted = "decimals with a comma or a point, and no thousands separators"});
  return DecimalMark::comma;
}

void TableIntake::remark_on(const MatchedColumns& columns, const DelimitedReader& reader) {
  if (!columns.not_used.empty()) {
    remarks_.push_back("Not used, because not understood: the columns " +
                       list_of_texts(columns.not_used) + ".");
  }
  if (reader.comment_count() > 0) {
    const std::size_t count = reader.comment_count();
    remarks_.push_back("Left out as comments, because they start with #: " + std::to_string(count) +
                       (count == 1 ? " row, in line " : " rows, the first in line ") +
                       std::to_string(reader.first_comment_line()) + ".");
  }
}

base::ResultOrProblems<trials::Trial> TableIntake::finish(std::string name) && {
  trials::Trial trial = std::move(builder_).finish(std::move(name));
  if (!problems_.empty()) {
    return tl::unexpected<std::vector<base::Problem>>(std::move(problems_).sorted());
  }
  trial.remarks.insert(trial.remarks.begin(), remarks_.begin(), remarks_.end());
  return trial;
}

}  // namespace keenfall::exchange
