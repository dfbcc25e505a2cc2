#include "exchange/table_survey.h"

#include "exchange/column_words.h"
#include "exchange/header_guess.h"
#include "exchange/plain_columns.h"
#include "exchange/problems_found.h"
#include "exchange/spreadsheet_file.h"
#include "exchange/surveyed_headers.h"
#include "exchange/surveyed_rows.h"
#include "exchange/text_file.h"
#include "exchange/watched_tables.h"

#include <algorithm>
#include <set>
#include <string_view>
#include <utility>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kRowsToGuessBy = 60;
constexpr std::size_t kBytesToGuessBy = std::size_t{1} << 20U;

// A table, unpacked or as text; neither where it is not readable.
struct Unpacked {
  std::optional<std::string_view> text;
  std::vector<Sheet> sheets;
};

Unpacked unpacked(const TableInHand& table) {
  if (is_spreadsheet(table.bytes)) {
    auto sheets = sheets_of(table.bytes);
    return {.text = {}, .sheets = sheets ? std::move(*sheets) : std::vector<Sheet>{}};
  }
  const auto text = text_of(table.bytes, table.name);
  return {.text = text ? std::optional(*text) : std::nullopt, .sheets = {}};
}

Grid first_rows_of_sheet(const Grid& sheet) {
  Grid first{.rows = {}, .is_sheet = true};
  const std::size_t count = std::min(sheet.rows.size(), kRowsToGuessBy);
  first.rows.assign(sheet.rows.begin(), sheet.rows.begin() + static_cast<std::ptrdiff_t>(count));
  return first;
}

std::vector<Grid> rows_to_guess_by(std::span<const TableInHand> tables,
                                   const std::vector<Unpacked>& all) {
  std::vector<Grid> grids;
  for (std::size_t i = 0; i < tables.size(); ++i) {
    for (const Sheet& sheet : all[i].sheets) {
      if (!sheet.is_hidden && !sheet.grid.rows.empty()) {
        grids.push_back(first_rows_of_sheet(sheet.grid));
      }
    }
    if (!all[i].text) continue;
    const std::string_view head = all[i].text->substr(0, kBytesToGuessBy);
    const std::vector<char> likely = likely_delimiters(head);
    const char named = tables[i].delimiter;
    if (named == '\0' && likely.empty()) continue;
    grids.push_back(first_rows_of(head, named == '\0' ? likely.front() : named));
  }
  return grids;
}

// Where each file and sheet of the problems is shown; nothing where it has no rows of its own.
class Survey {
 public:
  Survey(const TableOptions& options, const std::vector<Unpacked>& all, ProblemsFound found)
      : options_(options), all_(all), found_(std::move(found)) {
    std::ranges::stable_sort(found_.entries, {}, &ProblemList::Entry::at);
    if (found_.entries.size() > kMostProblemsShown) found_.entries.resize(kMostProblemsShown);
  }

  [[nodiscard]] TableSurvey made(const ColumnMap& proposed) && {
    survey_.proposed = proposed;
    survey_.problem_count = found_.total;
    for (const Unpacked& table : all_) {
      for (const Sheet& sheet : table.sheets) survey_.sheets.push_back(sheet.name);
    }
    for (std::size_t file = 0; file < found_.seen.size(); ++file) show(file);
    for (ProblemList::Entry& entry : found_.entries) {
      survey_.problems.push_back(placed(std::move(entry)));
    }
    for (ProblemList::Entry& entry : found_.noticed) {
      survey_.noticed.push_back(placed(std::move(entry)));
    }
    survey_.good = std::move(found_.good);
    return std::move(survey_);
  }

 private:
  [[nodiscard]] std::set<std::size_t> lines_of_problems(std::size_t file) const {
    std::set<std::size_t> lines;
    for (const auto* const entries : {&found_.entries, &found_.noticed}) {
      for (const ProblemList::Entry& entry : *entries) {
        if (entry.at.file == file && entry.at.line > 0) lines.insert(entry.at.line);
      }
    }
    return lines;
  }

  void show(std::size_t file) {
    grid_of_file_.emplace_back();
    const TableSeen& seen = found_.seen[file];
    const Unpacked& table = all_[seen.source];
    const auto sheet = std::ranges::find(table.sheets, seen.sheet, &Sheet::name);
    const bool is_sheet = !seen.sheet.empty() && sheet != table.sheets.end();
    if (!is_sheet && (!table.text || !seen.sheet.empty())) return;
    SurveyedGrid grid{.source = seen.source, .sheet = seen.sheet, .shape = seen.shape};
    const std::set<std::size_t> lines = lines_of_problems(file);
    if (is_sheet) {
      show_rows_of_sheet(sheet->grid, seen, lines, grid);
    } else {
      show_rows_of_text(*table.text, seen, lines, grid);
    }
    grid.headers = surveyed_headers(grid, seen, options_, survey_.proposed);
    grid_of_file_.back() = survey_.grids.size();
    survey_.grids.push_back(std::move(grid));
  }

  [[nodiscard]] PlacedProblem placed(ProblemList::Entry entry) const {
    PlacedProblem placed{
        .problem = std::move(entry.problem), .source = {}, .grid = {}, .row = {}, .column = {}};
    const bool is_of_file =
        !placed.problem.place.file.empty() && entry.at.file < found_.seen.size();
    if (is_of_file) {
      placed.source = found_.seen[entry.at.file].source;
      placed.grid = grid_of_file_[entry.at.file];
    }
    if (placed.grid && entry.at.line > 0) place_in(survey_.grids[*placed.grid], entry.at, placed);
    return placed;
  }

  static void place_in(const SurveyedGrid& grid, const Origin& at, PlacedProblem& placed) {
    const auto behind = std::ranges::upper_bound(grid.row_numbers, at.line);
    if (behind == grid.row_numbers.begin()) return;
    placed.row = static_cast<std::size_t>(behind - grid.row_numbers.begin()) - 1;
    const auto column = at.column > 0 ? std::optional(at.column - 1)
                                      : place_of_header(grid, placed.problem.place.column);
    if (column && *column < kMostColumnsShown) placed.column = column;
  }

  const TableOptions& options_;
  const std::vector<Unpacked>& all_;
  ProblemsFound found_;
  TableSurvey survey_;
  std::vector<std::optional<std::size_t>> grid_of_file_;
};

}  // namespace

TableSurvey survey_tables(std::span<const TableInHand> tables, const TableOptions& options) {
  return survey_tables(tables, options, base::unwatched());
}

TableSurvey survey_tables(std::span<const TableInHand> tables,
                          const TableOptions& options,
                          const base::ProgressReport& progress) {
  std::vector<Unpacked> all;
  for (const TableInHand& table : tables) all.push_back(unpacked(table));
  const ColumnMap proposed = guessed_columns(rows_to_guess_by(tables, all), options);
  TableOptions guessed = options;
  guessed.columns.insert(guessed.columns.end(), proposed.begin(), proposed.end());
  return Survey(guessed, all, problems_found(tables, guessed, kMostProblemsShown, progress))
      .made(proposed);
}

std::vector<KnownColumn> known_columns() {
  std::vector<KnownColumn> columns;
  for (const ColumnDefinition& definition : column_definitions()) {
    columns.push_back({.ours = std::string(definition.name),
                       .label = column_label(definition.name),
                       .words = std::string(column_in_words(definition.column)),
                       .is_required = index_of(definition.column) < kRequiredColumnCount});
  }
  return columns;
}

}  // namespace keenfall::exchange
