#include "exchange/table_intake.h"

#include "exchange/expanded_record.h"
#include "exchange/grid_record.h"
#include "exchange/kind_definition.h"
#include "exchange/row_choice.h"
#include "exchange/runs_table.h"
#include "exchange/text_file.h"
#include "exchange/text_lines.h"
#include "exchange/wide_table.h"

#include <algorithm>
#include <functional>
#include <utility>

namespace keenfall::exchange {

namespace {

const TableParts kNothing;

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

// As many as a sheet of a spreadsheet can have, and as many cells as are read of one.
constexpr std::size_t kMostColumns = 16'384;
constexpr std::size_t kMostGridCells = 5'000'000;

base::Problem too_many_cells() {
  return {.kind = base::ProblemKind::too_large,
          .sentence =
              "The table has more than 5,000,000 cells in a shape with several readings a "
              "row; no more are taken in.",
          .accepted = "fewer rows, or a row a reading"};
}

base::Problem doubtful_mark(const std::string& number, const std::string& header) {
  return {
      .kind = base::ProblemKind::conflicting,
      .sentence = in_quotes(number) +
                  " may mean a decimal fraction or a number of thousands, and no other number "
                  "of the table tells which. Write it so that it is clear: with another zero at "
                  "the end (1,2340), or without the comma (1234); or say --decimal=comma.",
      .place = {.column = header, .found = excerpt(number)},
      .accepted = "decimals with a comma or a point, and no thousands separators"};
}

base::Problem merged_reading() {
  return {.kind = base::ProblemKind::conflicting,
          .sentence =
              "The reading is merged over several cells, so which row it belongs to cannot "
              "be told. Unmerge them."};
}

// Of rows there were, and none that the options want.
base::Problem nothing_chosen(const std::vector<RowFilter>& filters) {
  std::string words;
  for (const RowFilter& filter : filters) {
    words += (words.empty() ? "" : " and ") + excerpt(filter.column) + "=" + excerpt(filter.wanted);
  }
  return {.kind = base::ProblemKind::unsuitable_data,
          .sentence = "No row says " + words + ", so --where leaves nothing to judge.",
          .place = {.column = "--where"},
          .accepted =
              "what a cell of that column says, letter for letter; of several --where all "
              "must hold"};
}

}  // namespace

TableIntake::TableIntake(const TableOptions& options)
    : options_(options), left_out_(kNothing), builder_(options, problems_) {
  check_options();
}

TableIntake::TableIntake(const TableOptions& options, const TableParts& left_out)
    : options_(options), left_out_(left_out), builder_(options, problems_) {
  problems_.keep_blames();
  check_options();
}

void TableIntake::check_options() {
  const std::string& kind = options_.default_kind;
  if (kind.empty() || find_kind(kind, options_.defined_kinds) != nullptr) return;
  problems_.add_general(
      {.kind = base::ProblemKind::unknown_name,
       .sentence = in_quotes(kind) + " is no kind of reading known here.",
       .place = {.column = "--kind", .found = excerpt(kind)},
       .accepted = list_of_kinds(options_.defined_kinds) + ", or your own by --define-kind"});
}

void TableIntake::report(base::Problem problem) {
  const std::size_t line = problem.place.line.value_or(0);
  problems_.add({problems_.current_file(), line}, std::move(problem), Concerns::table);
}

void TableIntake::begin_source(const std::string& name) {
  problems_.begin_file(name);
  seen_.push_back({.source = source_count_++});
}

void TableIntake::see(const RecognisedShape& shape, char delimiter) {
  TableSeen& seen = seen_.back();
  seen.shape = shape.shape;
  seen.delimiter = delimiter;
  seen.header_row = shape.header_row;
  seen.label_column = shape.label_column;
}

std::optional<std::string> TableIntake::take_file(const std::string& path) {
  begin_source(path);
  auto bytes = read_text_file(path);
  if (!bytes) {
    report(bytes.error());
    return std::nullopt;
  }
  take_content(*bytes, path, '\0');
  return std::move(*bytes);
}

void TableIntake::take_bytes(std::string_view bytes, const std::string& file_name) {
  begin_source(file_name);
  take_content(bytes, file_name, '\0');
}

void TableIntake::take_table(const TableInHand& table) {
  begin_source(table.name);
  take_content(table.bytes, table.name, table.delimiter);
}

void TableIntake::take_content(std::string_view bytes,
                               const std::string& file_name,
                               char delimiter) {
  if (is_stopped_) return;
  const std::size_t hash = std::hash<std::string_view>{}(bytes);
  const auto [same, is_new] = file_with_hash_.emplace(hash, file_name);
  if (!is_new) {
    return report(
        {.kind = base::ProblemKind::conflicting,
         .sentence = "This table is given twice: its content is that of " + same->second + "."});
  }
  if (is_spreadsheet(bytes)) return take_spreadsheet(bytes, file_name);
  if (!options_.sheets.empty()) {
    return report({.kind = base::ProblemKind::conflicting,
                   .sentence = "A sheet is named, " + in_quotes(options_.sheets.front()) +
                               ", but this file is not a spreadsheet and has no sheets.",
                   .place = {.column = "--sheet", .found = excerpt(options_.sheets.front())},
                   .accepted = "a spreadsheet (.xlsx, .ods), or no --sheet"});
  }
  const auto text = text_of(bytes, file_name);
  if (!text) return report(text.error());
  take_text(*text, delimiter);
}

// `named`: the delimiter, where it is known.
std::optional<TableIntake::Recognised> TableIntake::recognise(std::string_view text, char named) {
  std::optional<Recognised> first;
  const bool is_empty = trimmed(text).empty();
  for (const char delimiter :
       named == '\0' || is_empty ? likely_delimiters(text) : std::vector<char>{named}) {
    seen_.back().delimiter = delimiter;
    const auto shape = recognise_shape(first_rows_of(text, delimiter), options_);
    if (!shape) {
      report(shape.error());
      return std::nullopt;
    }
    if (shape->is_certain) return Recognised{.delimiter = delimiter, .shape = *shape};
    if (!first) first = Recognised{.delimiter = delimiter, .shape = *shape};
  }
  if (!first) report(without_separator(text));
  return first;
}

void TableIntake::take_text(std::string_view text, char delimiter) {
  if (const auto line = first_line_wider_than(kMostColumns, text)) {
    return report({.kind = base::ProblemKind::too_large,
                   .sentence = "The line has more than 16,384 cells; no table is as wide.",
                   .place = {.line = *line},
                   .accepted = "a row for each reading, or cuts down and runs across"});
  }
  const auto as = recognise(text, delimiter);
  if (!as) return;
  see(as->shape, as->delimiter);
  last_line_ = static_cast<std::size_t>(std::ranges::count(text, '\n')) + 1;
  if (as->shape.shape == TableShape::long_rows) return take_long_text(text, *as);
  const auto cells = static_cast<std::size_t>(std::ranges::count(text, as->delimiter));
  if (cells > kMostGridCells) return report(too_many_cells());
  DelimitedReader reader(text, as->delimiter);
  Grid grid = grid_of(reader);
  remark_on_comments(reader);
  take_grid(std::move(grid), as->shape, as->delimiter);
}

bool TableIntake::is_to_stop(std::size_t line) {
  constexpr std::size_t kRowsBetweenReports = 1000;
  if (is_stopped_ || row_count_ % kRowsBetweenReports != 0) return is_stopped_;
  const double share = static_cast<double>(line) / static_cast<double>(std::max(last_line_, line));
  is_stopped_ = !progress_({.fraction_done = share, .stage = "reading the table"});
  if (is_stopped_) {
    report({.kind = base::ProblemKind::interrupted,
            .sentence = "Reading the table was stopped before it was done."});
  }
  return is_stopped_;
}

bool TableIntake::is_too_long(std::size_t line) {
  ++row_count_;
  if (is_to_stop(line)) return true;
  if (row_count_ <= kMostRows) return false;
  if (row_count_ == kMostRows + 1) report(too_many_rows(line));
  return true;
}

void TableIntake::take_long_text(std::string_view text, const Recognised& as) {
  DelimitedReader reader(text, as.delimiter);
  std::string passed_over;
  auto header = reader.next();
  for (std::size_t i = 0; i < as.shape.header_row && header; ++i) {
    const auto content =
        std::ranges::find_if(header->cells, [](const Cell& cell) { return !cell.text.empty(); });
    if (content != header->cells.end()) {
      passed_over += (passed_over.empty() ? "" : ", ") + in_quotes(content->text);
    }
    header = reader.next();
  }
  if (!header || header->fault) {
    return report({.sentence = header ? header->fault->sentence : "The table has no header line.",
                   .place = {.line = header ? header->fault->cell.line : 1}});
  }
  auto columns = match_columns(*header, options_.columns, problems_, options_.defined_kinds);
  if (!columns) return;
  const auto mark = decimal_mark_of_text(text, as, *columns);
  if (!mark) return;
  RowChoice choice(options_.where, *columns, problems_);
  for (const RowFilter& filter : options_.where) std::erase(columns->not_used, filter.column);
  const RowFormat format{.columns = std::move(*columns), .delimiter = as.delimiter, .mark = *mark};
  const std::size_t rows_before = row_count_;
  while (const auto record = reader.next()) {
    if (is_too_long(record->line)) return;
    if (!record->fault && !choice.is_taken(*record)) continue;
    take_row(*record, format);
  }
  problems_.stand_nowhere();
  if (!passed_over.empty()) remarks_.push_back("Above the header stands " + passed_over + ".");
  remark_on(format.columns, reader);
  if (const auto remark = choice.remark()) remarks_.push_back(*remark);
  if (row_count_ > rows_before) return;
  report({.kind = base::ProblemKind::unsuitable_data,
          .sentence = reader.comment_count() == 0
                          ? "The table has a header but no rows."
                          : "The table has a header, but all other rows start with # and so are "
                            "comments. Put the cell in quotes if the # belongs to it.",
          .accepted = "a row for each reading"});
}

void TableIntake::take_row(const Record& record, const RowFormat& format) {
  const TablePart part = part_of(record.line);
  if (left_out_.has(part)) return builder_.note_left_out(row_as_far_as_read(record, format));
  problems_.stand_in(part);
  if (const auto row = read_row(record, format, problems_)) builder_.add(*row, format.columns);
}

void TableIntake::take_grid(Grid grid, const RecognisedShape& shape, char delimiter) {
  const bool is_wide = shape.shape == TableShape::wide;
  if (!grid.rows.empty()) last_line_ = grid.rows.back().line;
  if (!grid.is_sheet && is_wide) problems_.name_places_by(PlaceNaming::lines_and_letters);
  if (!grid.is_sheet) {
    for (const GridRow& row : grid.rows) {
      if (row.cells.empty() || row.cells.back().fault.empty()) continue;
      problems_.add(
          {problems_.current_file(), row.line},
          {.sentence = row.cells.back().fault, .place = {.found = excerpt(row.cells.back().text)}});
      return;
    }
  }
  DecimalMark mark = options_.decimal_mark;
  if (mark == DecimalMark::decide && delimiter == ',') mark = DecimalMark::point;
  if (mark == DecimalMark::decide) {
    const DecimalFinding found = decimal_mark_of(
        grid, is_wide ? 0 : shape.header_row + 1, left_out_, problems_.current_file());
    mark = found.mark;
    if (!found.ambiguous.empty()) {
      problems_.add({problems_.current_file(), found.line, found.column},
                    doubtful_mark(found.ambiguous, ""));
    }
  }
  write_numbers_with(mark, grid);
  if (shape.shape == TableShape::long_rows) return take_long_grid(grid, shape.header_row, mark);
  const RowTaker take = [this, mark](const ExpandedRow& row, const MatchedColumns& columns) {
    take_expanded(row, columns, mark);
  };
  const RowTaker note = [this, mark](const ExpandedRow& row, const MatchedColumns& columns) {
    note_expanded(row, columns, mark);
  };
  GridReading reading{.options = options_,
                      .mark = mark,
                      .problems = problems_,
                      .left_out = left_out_,
                      .take = take,
                      .note_left_out = note};
  append_remarks(is_wide ? take_wide_table(grid, shape.label_column, delimiter == ',', reading)
                         : take_runs_table(grid, shape.header_row, delimiter, reading));
  problems_.stand_nowhere();
}

void TableIntake::take_long_grid(const Grid& grid, std::size_t header_row, DecimalMark mark) {
  if (grid.rows.empty()) return;
  RecordOfGrid record(grid, mark);
  auto columns = match_columns(
      record.of(grid.rows[header_row]), options_.columns, problems_, options_.defined_kinds);
  if (!columns) return;
  RowChoice choice(options_.where, *columns, problems_);
  for (const RowFilter& filter : options_.where) std::erase(columns->not_used, filter.column);
  const RowFormat format{.columns = std::move(*columns), .delimiter = ';', .mark = mark};
  const auto reading_column = format.columns.positions[index_of(Column::reading)];
  std::string passed_over;
  for (std::size_t i = 0; i < grid.rows.size(); ++i) {
    const GridRow& row = grid.rows[i];
    if (i < header_row) {
      const auto content = std::ranges::find_if_not(row.cells, &GridCell::is_blank);
      if (content == row.cells.end()) continue;
      passed_over += (passed_over.empty() ? "" : ", ") + in_quotes(content->text);
    }
    if (i <= header_row) continue;
    if (is_too_long(row.line)) return;
    const Record cells = record.of(row);
    if (!choice.is_taken(cells)) continue;
    const GridCell& cell = row.at(*reading_column);
    if (cell.is_covered && !cell.is_blank()) {
      problems_.add({problems_.current_file(), row.line, *reading_column + 1},
                    merged_reading(),
                    Concerns::table);
    } else {
      take_row(cells, format);
    }
  }
  problems_.stand_nowhere();
  if (!passed_over.empty()) remarks_.push_back("Above the header stands " + passed_over + ".");
  if (!format.columns.not_used.empty()) {
    remarks_.push_back("Not used, because not understood: the columns " +
                       list_of_texts(format.columns.not_used) + ".");
  }
  if (const auto remark = choice.remark()) remarks_.push_back(*remark);
  if (grid.rows.size() > header_row + 1) return;
  report({.kind = base::ProblemKind::unsuitable_data,
          .sentence = "The table has a header but no rows.",
          .accepted = "a row for each reading"});
}

void TableIntake::take_expanded(const ExpandedRow& row,
                                const MatchedColumns& columns,
                                DecimalMark mark) {
  if (is_too_long(row.line)) return;
  const ExpandedRecord as(row, columns, mark);
  if (const auto taken = read_row(as.record(), as.format(), problems_)) {
    builder_.add(*taken, as.format().columns);
  }
}

void TableIntake::note_expanded(const ExpandedRow& row,
                                const MatchedColumns& columns,
                                DecimalMark mark) {
  const ExpandedRecord as(row, columns, mark);
  TableRow left_out = row_as_far_as_read(as.record(), as.format());
  left_out.at.file = problems_.current_file();
  builder_.note_left_out(left_out);
}

std::optional<DecimalMark> TableIntake::decimal_mark_of_text(std::string_view text,
                                                             const Recognised& as,
                                                             const MatchedColumns& columns) {
  if (options_.decimal_mark != DecimalMark::decide) return options_.decimal_mark;
  if (as.delimiter == ',') return DecimalMark::point;
  DelimitedReader reader(text, as.delimiter);
  DecimalTally tally;
  for (std::size_t i = 0; i <= as.shape.header_row; ++i) (void)reader.next();
  while (const auto record = reader.next()) {
    if (left_out_.has(part_of(record->line))) continue;
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
  base::Problem problem = doubtful_mark(tally.ambiguous()->text, tally.ambiguous()->column);
  problem.place.line = tally.ambiguous()->line;
  report(std::move(problem));
  return DecimalMark::comma;
}

void TableIntake::remark_on(const MatchedColumns& columns, const DelimitedReader& reader) {
  if (!columns.not_used.empty()) {
    remarks_.push_back("Not used, because not understood: the columns " +
                       list_of_texts(columns.not_used) + ".");
  }
  remark_on_comments(reader);
}

void TableIntake::remark_on_comments(const DelimitedReader& reader) {
  if (reader.comment_count() > 0) {
    const std::size_t count = reader.comment_count();
    remarks_.push_back("Left out as comments, because they start with #: " + std::to_string(count) +
                       (count == 1 ? " row, in line " : " rows, the first in line ") +
                       std::to_string(reader.first_comment_line()) + ".");
  }
}

void TableIntake::append_remarks(const std::vector<std::string>& remarks) {
  remarks_.insert(remarks_.end(), remarks.begin(), remarks.end());
}

base::ResultOrProblems<trials::Trial> TableIntake::finish(std::string name) && {
  Intake intake = std::move(*this).finish_blaming(std::move(name));
  if (intake.problems.empty()) return std::move(intake.trial);
  return tl::unexpected<std::vector<base::Problem>>(std::move(intake.problems).sorted());
}

TableIntake::Intake TableIntake::finish_blaming(std::string name) && {
  const bool are_rows_good = problems_.concerns_table() || problems_.blamed().parts().empty();
  if (!are_rows_good) {
    return {.trial = {}, .problems = std::move(problems_), .seen = std::move(seen_)};
  }
  trials::Trial trial = std::move(builder_).finish(std::move(name));
  const bool is_nothing_there = trial.runs.empty() && left_out_.all().empty();
  if (problems_.empty() && is_nothing_there && !options_.where.empty()) {
    problems_.add_general(nothing_chosen(options_.where));
  }
  trial.remarks.insert(trial.remarks.begin(), remarks_.begin(), remarks_.end());
  return {.trial = std::move(trial), .problems = std::move(problems_), .seen = std::move(seen_)};
}

void take_each(std::span<const TableInHand> tables,
               const base::ProgressReport& progress,
               TableIntake& intake) {
  const double share = 1 / static_cast<double>(tables.size());
  for (std::size_t i = 0; i < tables.size(); ++i) {
    intake.watch([&progress, share, before = share * static_cast<double>(i)](base::Progress told) {
      told.fraction_done = before + share * told.fraction_done;
      return progress(told);
    });
    intake.take_table(tables[i]);
  }
}

}  // namespace keenfall::exchange
