// A picture's place in a page: what it shows, the same in words, and the numbers behind it.
//
// The script draws the picture from the report's JSON, by kind and by the indices given here;
// without script the words and the table stand for it.
#pragma once

#include "page/html.h"
#include "telling/table.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::page {

struct Figure {
  std::string kind;           // which picture: web/src/report/pictures.ts lists them
  std::size_t judgement = 0;  // index into the report's judgements
  std::size_t medium = 0;     // index into telling::groups_of, where the picture is of one medium
  std::vector<std::size_t> pairs;  // indices into Judgement::comparisons, where it is of some
  std::string form;                // how, where a kind has several: curves_drawn.h
  std::string caption;             // what is seen, and how to read it
  std::string words;               // what it shows, in sentences
  telling::Table numbers;
};

void add_figure(Html& html, const Figure& figure);

// A table with a caption and, where it is wider than the page, room to scroll.
void add_table(Html& html, const telling::Table& table);

// Opens a table and the box it scrolls in: two elements to close.
void begin_table(Html& html, const std::string& caption);

[[nodiscard]] std::string_view side_class(telling::Side side);

}  // namespace keenfall::page
