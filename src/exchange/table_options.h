// What a person says beside the table: foreign headers, own kinds of reading, the decimal mark.
#pragma once

#include "exchange/column_mapping.h"
#include "exchange/decimal_mark.h"
#include "trials/reading_kind.h"

#include <string>
#include <vector>

namespace keenfall::exchange {

struct TableOptions {
  ColumnMap columns;                               // ours -> theirs
  std::vector<trials::ReadingKind> defined_kinds;  // before those known by themselves
  std::string default_kind;  // of rows that name none; empty: decided and said
  DecimalMark decimal_mark = DecimalMark::decide;
};

}  // namespace keenfall::exchange
