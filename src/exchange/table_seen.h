// What a table in hand, or a sheet of it, was taken for while it was read. Private to the folder.
#pragma once

#include "exchange/table_options.h"

#include <cstddef>
#include <optional>
#include <string>

namespace keenfall::exchange {

struct TableSeen {
  std::size_t source = 0;  // of the tables given, from 0
  std::string sheet;       // of a spreadsheet; empty: the file as a whole
  std::optional<TableShape> shape;
  char delimiter = '\0';         // of a text, once it is known
  std::size_t header_row = 0;    // index into its rows with content; of a wide table: unused
  std::size_t label_column = 0;  // of a wide table, from 0
};

}  // namespace keenfall::exchange
