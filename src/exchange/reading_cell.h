// A reading as people write it into a cell of their own table: "131", "131 slipped", "240
// (struck)", "118?", "131 / 128 / 135", "-", "stopped".
//
// In: the cell's text, the table's decimal mark, the kinds the person defined (for their units).
// Out: the readings with what stands beside each, or words without a number, or nothing ("-",
// "n/a"). A single word that is not known (says_why_no_reading) is one only in brackets. Repeats
// are parted by a slash, semicolon, bar, line end or a comma with a blank; a comma alone is never
// one. Fails with a Problem where a number might be taken by half.
#pragma once

#include "base/result.h"
#include "exchange/decimal_mark.h"
#include "trials/reading_kind.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::exchange {

struct WrittenReading {
  std::string number;    // with its unit, where the cell names one
  std::string note;      // what else stands there: "slipped", "about"; empty: nothing
  std::string struck;    // why it does not count; empty: it counts
  std::string doubtful;  // why it is not trusted, though it counts; empty: it is
  int repeat = 0;        // place in the cell, from 1; 0: the only one

  bool operator==(const WrittenReading&) const = default;
};

struct ReadingCell {
  std::vector<WrittenReading> readings;
  std::string event;  // words without a number
};

[[nodiscard]] base::Result<ReadingCell> reading_cell(
    std::string_view text, DecimalMark mark, std::span<const trials::ReadingKind> defined_kinds);

// The pieces of a cell that may be numbers: for deciding the decimal mark.
[[nodiscard]] std::vector<std::string_view> parts_of_cell(std::string_view text);

}  // namespace keenfall::exchange
