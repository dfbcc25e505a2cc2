#include "page/figure.h"

#include <algorithm>
#include <utility>

namespace keenfall::page {

namespace {

std::string numbers_listed(const std::vector<std::size_t>& numbers) {
  std::string text;
  for (const std::size_t number : numbers) {
    text += (text.empty() ? "" : ",") + std::to_string(number);
  }
  return text;
}

// The columns from `first` on, so many, beside the first column, which says what a row is of.
telling::Table piece_of(const telling::Table& table, std::size_t first, std::size_t count) {
  const std::size_t end = std::min(first + count, table.columns.size());
  std::string heads = table.columns[first].head;
  if (end - first > 1) heads += " to " + table.columns[end - 1].head;
  telling::Table piece{.caption = table.caption + " (" + heads + ")",
                       .columns = {table.columns.front()}};
  for (std::size_t i = first; i < end; ++i) piece.columns.push_back(table.columns[i]);
  for (const telling::Row& row : table.rows) {
    telling::Row part = row;
    if (row.cells.size() == table.columns.size()) {
      part.cells = {row.cells.front()};
      for (std::size_t i = first; i < end; ++i) part.cells.push_back(row.cells[i]);
    }
    piece.rows.push_back(std::move(part));
  }
  return piece;
}

// A sheet of paper holds so many columns of numbers with their intervals; a table with many more
// comes in pieces.
std::vector<telling::Table> pieces_of(const telling::Table& table) {
  constexpr std::size_t kMostColumns = 8;
  constexpr std::size_t kColumnsOfAPiece = 6;
  if (table.columns.size() <= kMostColumns) return {table};
  std::vector<telling::Table> pieces;
  for (std::size_t first = 1; first < table.columns.size(); first += kColumnsOfAPiece) {
    pieces.push_back(piece_of(table, first, kColumnsOfAPiece));
  }
  return pieces;
}

void add_piece(Html& html, const telling::Table& table) {
  begin_table(html, table.caption);
  html.open("thead").open("tr");
  for (const telling::Column& column : table.columns) {
    html.element("th", column.head, {{"scope", "col"}, {"class", side_class(column.side)}});
  }
  html.close().close().open("tbody");
  for (const telling::Row& row : table.rows) {
    html.open("tr");
    if (row.cells.size() == 1 && table.columns.size() > 1) {
      html.element("th",
                   row.cells.front(),
                   {{"scope", "rowgroup"}, {"colspan", std::to_string(table.columns.size())}});
    } else {
      for (std::size_t i = 0; i < row.cells.size(); ++i) {
        const std::string_view side = side_class(table.columns[i].side);
        if (i == 0) {
          const std::string name = row.key.empty() ? row.cells[i] : row.key + "  " + row.cells[i];
          html.element("th", name, {{"scope", "row"}, {"class", side}});
        } else {
          html.element("td", row.cells[i], {{"class", side}});
        }
      }
    }
    html.close();
  }
  html.close().close().close();
}

}  // namespace

std::string_view side_class(telling::Side side) {
  return side == telling::Side::right ? "number" : "words";
}

void begin_table(Html& html, const std::string& caption) {
  html.open("div",
            {{"class", "scrolled"}, {"tabindex", "0"}, {"role", "group"}, {"aria-label", caption}});
  html.open("table").element("caption", caption);
}

void add_table(Html& html, const telling::Table& table) {
  const std::vector<telling::Table> pieces = pieces_of(table);
  for (const telling::Table& piece : pieces) add_piece(html, piece);
  for (const std::string& note : table.footnotes) html.element("p", note, {{"class", "quiet"}});
}

void add_figure(Html& html, const Figure& figure) {
  html.open("figure",
            {{"data-figure", figure.kind},
             {"data-judgement", std::to_string(figure.judgement)},
             {"data-medium", std::to_string(figure.medium)},
             {"data-pairs", numbers_listed(figure.pairs)},
             {"data-form", figure.form}});
  html.element("figcaption", with_units_kept(figure.caption));
  html.open("div", {{"class", "picture"}, {"hidden", ""}}).close();
  html.element("p", with_units_kept(figure.words), {{"class", "in-words"}});
  if (!figure.numbers.rows.empty()) {
    html.open("details").element("summary", "The numbers behind this picture");
    add_table(html, figure.numbers);
    html.close();
  }
  html.close();
}

}  // namespace keenfall::page
