#include "exchange/table_shape.h"

#include "exchange/text_lines.h"

#include <algorithm>
#include <array>
#include <set>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kMostLabelColumns = 6;  // a wide table's labels stand among the first columns

// What one row would mean as a header.
struct AsHeader {
  std::set<Column> columns;
  std::size_t cut_columns = 0;  // "15 cuts"

  [[nodiscard]] std::size_t names() const {
    return columns.count(Column::blade) + columns.count(Column::medium) +
           columns.count(Column::run);
  }
  [[nodiscard]] bool has_reading() const { return columns.contains(Column::reading); }
  [[nodiscard]] bool has_cuts() const { return columns.contains(Column::cuts); }
  [[nodiscard]] bool is_of_runs() const {
    return cut_columns > 0 || columns.contains(Column::start_reading) ||
           columns.contains(Column::stop_reading) || columns.contains(Column::lasted) ||
           columns.contains(Column::failed_by);
  }
};

AsHeader as_header(const GridRow& row, const TableOptions& options) {
  AsHeader header;
  for (const GridCell& cell : row.cells) {
    if (cell.is_covered) continue;
    if (const auto meaning = meaning_by(options, cell.text)) {
      header.columns.insert(meaning->column);
    } else if (cuts_in_header(cell.text)) {
      ++header.cut_columns;
    }
  }
  return header;
}

struct HeaderRow {
  std::size_t row = 0;
  AsHeader header;
};

// The row that names most of blade, medium, run, cuts and reading; the first of equals.
HeaderRow best_header_row(const Grid& grid, const TableOptions& options) {
  HeaderRow best;
  std::size_t most = 0;
  for (std::size_t i = 0; i < grid.rows.size(); ++i) {
    AsHeader header = as_header(grid.rows[i], options);
    const std::size_t found =
        2 * header.names() + (header.has_cuts() ? 1 : 0) + (header.has_reading() ? 1 : 0);
    if (found <= most) continue;
    most = found;
    best = {.row = i, .header = std::move(header)};
  }
  return best;
}

struct Labels {
  std::size_t column = 0;
  std::size_t names = 0;  // of blade, medium, run
  bool has_cuts = false;
};

Labels best_labels(const Grid& grid, const TableOptions& options) {
  Labels best;
  std::size_t most = 0;
  for (std::size_t c = 0; c < std::min(kMostLabelColumns, grid.width()); ++c) {
    std::set<Column> columns;
    for (const GridRow& row : grid.rows) {
      if (row.at(c).is_covered) continue;
      if (const auto meaning = meaning_by(options, row.at(c).text)) columns.insert(meaning->column);
    }
    if (columns.size() <= most) continue;
    most = columns.size();
    best = {.column = c,
            .names = columns.count(Column::blade) + columns.count(Column::medium) +
                     columns.count(Column::run),
            .has_cuts = columns.contains(Column::cuts)};
  }
  return best;
}

base::Problem two_shapes(std::size_t line, std::string_view one, std::string_view other) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "The table could be read as " + std::string(one) + " and as " +
                      std::string(other) + ". Say which with --shape.",
          .place = {.line = line},
          .accepted = "--shape=long, --shape=wide or --shape=runs"};
}

}  // namespace

std::optional<HeaderMeaning> meaning_by(const TableOptions& options, std::string_view header) {
  const std::string wanted = folded_header(header);
  if (wanted.empty()) return std::nullopt;
  bool is_replaced = false;
  auto meaning = meaning_of_header(header, options.defined_kinds);
  for (const ColumnMapping& mapping : options.columns) {
    const ColumnDefinition* const definition = find_definition(mapping.ours);
    if (definition == nullptr) continue;
    if (folded_header(mapping.theirs) == wanted) {
      return HeaderMeaning{
          .column = definition->column,
          .unit = unit_in_header(header, definition->column, options.defined_kinds)};
    }
    is_replaced = is_replaced || (meaning && meaning->column == definition->column);
  }
  return is_replaced ? std::nullopt : meaning;
}

std::optional<TableShape> table_shape_named(std::string_view name) {
  if (name == "long") return TableShape::long_rows;
  if (name == "wide") return TableShape::wide;
  if (name == "runs") return TableShape::runs;
  return std::nullopt;
}

base::Result<RecognisedShape> recognise_shape(const Grid& first_rows, const TableOptions& options) {
  const HeaderRow best = best_header_row(first_rows, options);
  const Labels labels = best_labels(first_rows, options);
  RecognisedShape shape{.shape = options.shape,
                        .header_row = best.row,
                        .label_column = labels.column,
                        .is_certain = true};
  if (options.shape != TableShape::decide) return shape;
  const std::size_t line = first_rows.rows.empty() ? 1 : first_rows.rows[best.row].line;
  const bool has_header = best.header.names() >= 2;
  const bool has_labels = labels.names >= 2;
  if (has_header && has_labels) {
    return base::failed(two_shapes(line, "a long table", "a wide one (cuts down, runs across)"));
  }
  if (has_labels) {
    shape.shape = TableShape::wide;
  } else if (has_header) {
    const AsHeader& header = best.header;
    const bool is_long = header.has_cuts() && header.has_reading();
    if (is_long && header.cut_columns >= 2) {
      return base::failed(two_shapes(line, "a long table", "one with a line for each run"));
    }
    const bool is_runs =
        !is_long && header.is_of_runs() && !(header.has_reading() && header.cut_columns == 0);
    shape.shape = is_runs ? TableShape::runs : TableShape::long_rows;
  } else {
    // Too little to go by: whichever names more of what it needs, so that the rest can be asked
    // for.
    const bool is_wide =
        labels.names > best.header.names() ||
        (labels.has_cuts && best.header.names() == 0 && !best.header.has_reading());
    shape.shape = is_wide ? TableShape::wide : TableShape::long_rows;
    shape.is_certain = false;
    if (best.header.names() == 0) shape.header_row = 0;
  }
  return shape;
}

}  // namespace keenfall::exchange
