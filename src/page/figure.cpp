#include "page/figure.h"

namespace keenfall::page {

namespace {

std::string numbers_listed(const std::vector<std::size_t>& numbers) {
  std::string text;
  for (const std::size_t number : numbers) {
    text += (text.empty() ? "" : ",") + std::to_string(number);
  }
  return text;
}

std::string_view side_class(telling::Side side) {
  return side == telling::Side::right ? "number" : "words";
}

}  // namespace

void add_table(Html& html, const telling::Table& table) {
  html.open(
      "div",
      {{"class", "scrolled"}, {"tabindex", "0"}, {"role", "group"}, {"aria-label", table.caption}});
  html.open("table").element("caption", table.caption).open("thead").open("tr");
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
  for (const std::string& note : table.footnotes) html.element("p", note, {{"class", "quiet"}});
}

void add_figure(Html& html, const Figure& figure) {
  html.open("figure",
            {{"data-figure", figure.kind},
             {"data-judgement", std::to_string(figure.judgement)},
             {"data-medium", std::to_string(figure.medium)},
             {"data-pairs", numbers_listed(figure.pairs)}});
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
