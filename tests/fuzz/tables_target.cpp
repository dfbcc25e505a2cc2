// Tables: text or the bytes of a spreadsheet, with what a person says beside them.
//
// The first line is "SHAPE MARK CONTAINER|kind definition|column mapping|row filter|sheet|kind",
// the first of them three digits; with CONTAINER 1 the rest are the parts of a spreadsheet
// (input_parts.h), otherwise it is the file's bytes.
#include "exchange/long_table.h"
#include "fuzz_target.h"
#include "input_parts.h"

#include <algorithm>
#include <array>
#include <string>

namespace {

using keenfall::exchange::DecimalMark;
using keenfall::exchange::TableOptions;
using keenfall::exchange::TableShape;

constexpr std::array kShapes = {
    TableShape::decide, TableShape::long_rows, TableShape::wide, TableShape::runs};
constexpr std::array kMarks = {DecimalMark::decide, DecimalMark::point, DecimalMark::comma};

TableOptions options_of(const std::vector<std::string>& words) {
  const auto shape = static_cast<unsigned char>(words[0][0]) % kShapes.size();
  const auto mark = static_cast<unsigned char>(words[0][1]) % kMarks.size();
  TableOptions options{.columns = {},
                       .defined_kinds = {},
                       .default_kind = words[5],
                       .decimal_mark = kMarks.at(mark),
                       .shape = kShapes.at(shape)};
  if (const auto kind = keenfall::exchange::parse_kind_definition(words[1])) {
    options.defined_kinds.push_back(*kind);
  }
  if (const auto mapping = keenfall::exchange::parse_column_mapping(words[2])) {
    options.columns.push_back(*mapping);
  }
  if (const auto filter = keenfall::exchange::parse_row_filter(words[3])) {
    options.where.push_back(*filter);
  }
  if (!words[4].empty()) options.sheets.push_back(words[4]);
  return options;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  std::string_view input = keenfall::fuzz::as_text(bytes, size);
  auto words = keenfall::fuzz::words_of_first_line(input);
  words.resize(std::max<std::size_t>(words.size(), 6));
  words[0].resize(std::max<std::size_t>(words[0].size(), 3), '0');
  const bool is_spreadsheet = words[0][2] == '1';

  const std::string file =
      is_spreadsheet ? keenfall::fuzz::stored_archive(keenfall::fuzz::parts_of_input(input))
                     : std::string(input);
  const auto trial = keenfall::exchange::take_table_text(file, "table", options_of(words));
  if (trial) {
    (void)keenfall::exchange::long_table_of(*trial);
  } else {
    for (const auto& problem : trial.error()) (void)keenfall::base::in_words(problem);
  }
  return 0;
}
