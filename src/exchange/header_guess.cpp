#include "exchange/header_guess.h"

#include "exchange/header_meaning.h"
#include "exchange/table_shape.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kMostLabelColumnsLookedAt = 6;

// A header or label, and the cells it stands over or before.
struct HeaderCell {
  std::string text;
  std::vector<std::string_view> beneath;
};

bool begins_with_digit(std::string_view text) {
  return !text.empty() && text.front() >= '0' && text.front() <= '9';
}

bool holds_such_cells(Column column, const std::vector<std::string_view>& cells) {
  if (definition_of(column).content == CellContent::text) return true;
  std::size_t filled = 0;
  std::size_t numbers = 0;
  for (const std::string_view cell : cells) {
    filled += cell.empty() ? 0U : 1U;
    numbers += begins_with_digit(cell) ? 1U : 0U;
  }
  return 2 * numbers >= filled;
}

std::vector<HeaderCell> header_in_row(const Grid& grid, std::size_t row) {
  std::vector<HeaderCell> header;
  for (std::size_t c = 0; c < grid.rows[row].cells.size(); ++c) {
    HeaderCell cell{.text = grid.rows[row].at(c).text};
    for (std::size_t r = row + 1; r < grid.rows.size(); ++r) {
      cell.beneath.push_back(grid.rows[r].at(c).text);
    }
    header.push_back(std::move(cell));
  }
  return header;
}

std::vector<HeaderCell> labels_in_column(const Grid& grid, std::size_t column) {
  std::vector<HeaderCell> labels;
  for (const GridRow& row : grid.rows) {
    HeaderCell label{.text = row.at(column).text};
    for (std::size_t c = column + 1; c < row.cells.size(); ++c) {
      label.beneath.push_back(row.at(c).text);
    }
    labels.push_back(std::move(label));
  }
  return labels;
}

// What one line of headers says, and may say.
struct Guesses {
  ColumnMap columns;
  std::size_t named = 0;  // of blade, medium, run, cuts and reading, by a name or a guess
};

std::size_t worth(Column column) { return index_of(column) < kRequiredColumnCount ? 1 : 0; }

Guesses guesses_for(const std::vector<HeaderCell>& headers, const TableOptions& options) {
  std::set<Column> known;
  std::map<Column, std::set<std::string>> headers_of;
  for (const HeaderCell& header : headers) {
    if (const auto meaning = meaning_by(options, header.text)) {
      known.insert(meaning->column);
    } else if (cuts_in_header(header.text)) {
      continue;
    } else if (const auto guess = guessed_column(header.text);
               guess && holds_such_cells(*guess, header.beneath)) {
      headers_of[*guess].insert(header.text);
    }
  }
  Guesses guesses;
  for (const Column column : known) guesses.named += worth(column);
  for (const auto& [column, texts] : headers_of) {
    const ColumnDefinition* const definition = &definition_of(column);
    const bool is_mapped = std::ranges::any_of(options.columns, [&](const ColumnMapping& mapping) {
      return find_definition(mapping.ours) == definition;
    });
    if (texts.size() != 1 || known.contains(column) || is_mapped) continue;
    guesses.named += worth(column);
    guesses.columns.push_back({.ours = std::string(definition->name), .theirs = *texts.begin()});
  }
  return guesses;
}

Guesses best_guesses(const Grid& grid, const TableOptions& options) {
  const auto shape = recognise_shape(grid, options);
  if (shape && shape->is_certain && !grid.rows.empty()) {
    return guesses_for(shape->shape == TableShape::wide
                           ? labels_in_column(grid, shape->label_column)
                           : header_in_row(grid, shape->header_row),
                       options);
  }
  Guesses best;
  const auto keep_if_better = [&](Guesses guesses) {
    if (guesses.named > best.named) best = std::move(guesses);
  };
  for (std::size_t r = 0; r < grid.rows.size(); ++r) {
    keep_if_better(guesses_for(header_in_row(grid, r), options));
  }
  for (std::size_t c = 0; c < std::min(kMostLabelColumnsLookedAt, grid.width()); ++c) {
    keep_if_better(guesses_for(labels_in_column(grid, c), options));
  }
  return best;
}

bool has_header(const Grid& grid, const std::string& theirs) {
  const std::string wanted = folded_header(theirs);
  return std::ranges::any_of(grid.rows, [&](const GridRow& row) {
    return std::ranges::any_of(
        row.cells, [&](const GridCell& cell) { return folded_header(cell.text) == wanted; });
  });
}

}  // namespace

ColumnMap guessed_columns(std::span<const Grid> first_rows, const TableOptions& options) {
  ColumnMap columns;
  for (const Grid& grid : first_rows) {
    for (const ColumnMapping& guess : best_guesses(grid, options).columns) {
      const auto same = std::ranges::find(columns, guess.ours, &ColumnMapping::ours);
      if (same == columns.end()) {
        columns.push_back(guess);
      } else if (folded_header(same->theirs) != folded_header(guess.theirs)) {
        return {};
      }
    }
  }
  TableOptions guessed = options;
  guessed.columns.insert(guessed.columns.end(), columns.begin(), columns.end());
  std::vector<const Grid*> tables;  // what else a spreadsheet holds has no say
  for (const Grid& grid : first_rows) {
    const auto shape = recognise_shape(grid, guessed);
    if (first_rows.size() == 1 || !shape || shape->is_certain) tables.push_back(&grid);
  }
  const auto is_missing_somewhere = [&](const ColumnMapping& guess) {
    return !std::ranges::all_of(tables,
                                [&](const Grid* grid) { return has_header(*grid, guess.theirs); });
  };
  std::erase_if(columns, is_missing_somewhere);
  return columns;
}

}  // namespace keenfall::exchange
