#include "exchange/run_identity.h"

#include "exchange/text_lines.h"

#include <algorithm>
#include <array>
#include <cstring>

namespace keenfall::exchange {

namespace {

constexpr std::array kNameColumns = {Column::blade, Column::medium, Column::run};

constexpr std::array kArmColumns = {Column::specimen,
                                    Column::bevel_angle,
                                    Column::apex_angle,
                                    Column::finish,
                                    Column::thickness_behind_edge,
                                    Column::method,
                                    Column::cut_length,
                                    Column::edge_used,
                                    Column::board,
                                    Column::medium_condition};

constexpr std::array kRunColumns = {Column::steel,
                                    Column::hardness,
                                    Column::medium_lot,
                                    Column::block,
                                    Column::order,
                                    Column::operator_name,
                                    Column::date,
                                    Column::sharpenings_since_new};

// Cells hold no control characters, so these cannot be confused with what they say.
constexpr char kCellEnd = '\x1F';
constexpr char kNumberFollows = '\x1E';

void append_cell(std::string& key, const RowCell& cell) {
  if (cell.number) {
    std::array<char, sizeof(double)> bytes{};
    std::memcpy(bytes.data(), &*cell.number, bytes.size());
    key += kNumberFollows;
    key.append(bytes.data(), bytes.size());
  } else {
    key += cell.text;
  }
  key += kCellEnd;
}

}  // namespace

std::span<const Column> name_columns() { return kNameColumns; }
std::span<const Column> arm_columns() { return kArmColumns; }
std::span<const Column> run_columns() { return kRunColumns; }

ToldCell told_cell(const TableRow& row, Column column) {
  const RowCell& cell = row[column];
  const Origin at = cell.is_blank() ? row.at : row.origin_of(column);
  if (cell.number) return {.text = "", .number = cell.number, .at = at};
  return {.text = std::string(cell.text), .number = std::nullopt, .at = at};
}

std::string run_key_of(const TableRow& row) {
  std::string key;
  for (const Column column : kNameColumns) append_cell(key, row[column]);
  for (const Column column : kArmColumns) append_cell(key, row[column]);
  return key;
}

std::string name_key_of(const RunDraft& draft) {
  std::string key;
  for (const Column column : kNameColumns) key += draft[column].text + kCellEnd;
  return key;
}

bool says_otherwise(const ToldCell& one, const ToldCell& other) {
  return !one.is_blank() && !other.is_blank() &&
         (one.text != other.text || one.number != other.number);
}

bool may_be_one_run(const RunDraft& one, const RunDraft& other) {
  return std::ranges::none_of(kArmColumns, [&one, &other](Column column) {
    return says_otherwise(one[column], other[column]);
  });
}

std::string run_in_words(const RunDraft& draft) {
  return "Run " + in_quotes(draft[Column::run].text) + " of blade " +
         in_quotes(draft[Column::blade].text) + " in " + in_quotes(draft[Column::medium].text);
}

}  // namespace keenfall::exchange
