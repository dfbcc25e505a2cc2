#include "exchange/header_meaning.h"

#include "exchange/number_cell.h"
#include "exchange/text_lines.h"
#include "materials/units.h"
#include "trials/counted.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace keenfall::exchange {

namespace {

struct OtherName {
  std::string_view folded_name;
  Column column;
  double factor = 1;
};

// Headers as people write them (common practice, no source).
constexpr std::array<OtherName, 35> kOtherNames = {{
    {"knife", Column::blade},
    {"cut", Column::cuts},
    {"cutsmade", Column::cuts},
    {"numberofcuts", Column::cuts},
    {"aftercuts", Column::cuts},
    {"readings", Column::reading},
    {"runno", Column::run},
    {"runno.", Column::run},
    {"runnumber", Column::run},
    {"run#", Column::run},
    {"steelgrade", Column::steel},
    {"hrc", Column::hardness},
    {"hardness,hrc", Column::hardness},
    {"bevelangleperside", Column::bevel_angle},
    {"bevelangledegperside", Column::bevel_angle},
    {"angleperside", Column::bevel_angle},
    {"anglepersidedeg", Column::bevel_angle},
    {"inclusiveangle", Column::bevel_angle, 0.5},
    {"inclusiveangledeg", Column::bevel_angle, 0.5},
    {"bevelangleinclusive", Column::bevel_angle, 0.5},
    {"bevelangleinclusivedeg", Column::bevel_angle, 0.5},
    {"bevelangledeginclusive", Column::bevel_angle, 0.5},
    {"apexangleperside", Column::apex_angle},
    {"apexangledegperside", Column::apex_angle},
    {"apexangleinclusive", Column::apex_angle, 0.5},
    {"apexangleinclusivedeg", Column::apex_angle, 0.5},
    {"notes", Column::note},
    {"comment", Column::note},
    {"comments", Column::note},
    {"void", Column::voided},
    {"deviations", Column::deviation},
    {"lastedcuts", Column::lasted},
    {"failedbycuts", Column::failed_by},
    {"failedat", Column::failed_by},
    {"start", Column::start_reading},
}};

// Names whose own unit is part of them, without it: only with a unit in the header.
constexpr std::array<OtherName, 4> kNamesWithoutUnit = {{
    {"thicknessbehindedge", Column::thickness_behind_edge},
    {"thicknessbehindtheedge", Column::thickness_behind_edge},
    {"cutlength", Column::cut_length},
    {"edgeused", Column::edge_used},
}};

struct NameAndUnit {
  std::string_view name;
  std::string_view unit;
};

// "reading (gf)", "reading [gf]" and "reading, gf"; without a unit the whole is the name.
NameAndUnit name_and_unit(std::string_view header) {
  header = trimmed(header);
  std::size_t open = header.npos;
  if (header.ends_with(')')) open = header.rfind('(');
  if (header.ends_with(']')) open = header.rfind('[');
  if (open != header.npos && open > 0) {
    return {.name = trimmed(header.substr(0, open)),
            .unit = trimmed(header.substr(open + 1, header.size() - open - 2))};
  }
  const std::size_t comma = header.rfind(',');
  if (comma == header.npos || comma == 0) return {.name = header, .unit = {}};
  return {.name = trimmed(header.substr(0, comma)), .unit = trimmed(header.substr(comma + 1))};
}

bool is_reading_column(Column column) {
  return column == Column::reading || column == Column::start_reading ||
         column == Column::stop_reading;
}

bool is_reading_unit(std::string_view unit, std::span<const trials::ReadingKind> defined_kinds) {
  if (materials::find_unit(unit) != nullptr) return true;
  const auto has_unit = [unit](const trials::ReadingKind& kind) { return kind.unit == unit; };
  return std::ranges::any_of(defined_kinds, has_unit) ||
         std::ranges::any_of(trials::known_reading_kinds(), has_unit);
}

// nullopt where the column cannot be in it.
std::optional<HeaderUnit> unit_of_column(std::string_view unit,
                                         Column column,
                                         std::span<const trials::ReadingKind> defined_kinds) {
  if (is_reading_column(column)) {
    if (!is_reading_unit(unit, defined_kinds)) return std::nullopt;
    return HeaderUnit{.name = std::string(unit)};
  }
  const std::string_view own = definition_of(column).unit;
  if (own.empty()) return std::nullopt;
  if (folded(unit) == folded(own)) return HeaderUnit{};
  if (own != "mm") return std::nullopt;
  const auto factor = materials::convert(1, unit, own);
  if (!factor) return std::nullopt;
  return HeaderUnit{.factor = *factor};
}

// Is it so many of what the table counts? Its header may say what: "cuts (strokes)".
bool counts(Column column) {
  return column == Column::cuts || column == Column::lasted || column == Column::failed_by;
}

const OtherName* other_name(std::span<const OtherName> names, const std::string& name) {
  const auto found = std::ranges::find(names, name, &OtherName::folded_name);
  return found == names.end() ? nullptr : &*found;
}

}  // namespace

std::string folded_header(std::string_view header) {
  std::string letters = folded(header);
  std::erase_if(letters, [](char c) { return c == '(' || c == ')' || c == '[' || c == ']'; });
  for (std::size_t at = letters.find("°"); at != letters.npos; at = letters.find("°")) {
    letters.replace(at, std::string_view("°").size(), "deg");
  }
  return letters;
}

std::optional<HeaderMeaning> meaning_of_header(std::string_view header,
                                               std::span<const trials::ReadingKind> defined_kinds) {
  const std::string whole = folded_header(header);
  if (whole.empty()) return std::nullopt;
  if (const ColumnDefinition* const own = find_definition(whole)) {
    return HeaderMeaning{.column = own->column};
  }
  if (const OtherName* const other = other_name(kOtherNames, whole)) {
    return HeaderMeaning{
        .column = other->column, .unit = {.factor = other->factor}, .is_own_name = false};
  }
  const NameAndUnit parts = name_and_unit(header);
  if (parts.unit.empty()) return std::nullopt;
  const std::string name = folded_header(parts.name);
  std::optional<Column> column;
  if (const ColumnDefinition* const own = find_definition(name)) column = own->column;
  const OtherName* other = other_name(kNamesWithoutUnit, name);
  if (other == nullptr) other = other_name(kOtherNames, name);
  if (!column && other != nullptr) column = other->column;
  if (!column) return std::nullopt;
  if (counts(*column) && trials::counted_in_words(parts.unit)) {
    return HeaderMeaning{.column = *column};
  }
  auto unit = unit_of_column(parts.unit, *column, defined_kinds);
  if (!unit) return std::nullopt;
  return HeaderMeaning{.column = *column, .unit = std::move(*unit)};
}

HeaderUnit unit_in_header(std::string_view header,
                          Column column,
                          std::span<const trials::ReadingKind> defined_kinds) {
  const NameAndUnit parts = name_and_unit(header);
  if (parts.unit.empty()) return {};
  return unit_of_column(parts.unit, column, defined_kinds).value_or(HeaderUnit{});
}

bool is_doubtful_angle(std::string_view header) {
  constexpr std::array<std::string_view, 7> kDoubtful = {"bevelangle",
                                                         "bevelangledeg",
                                                         "apexangle",
                                                         "apexangledeg",
                                                         "edgeangle",
                                                         "edgeangledeg",
                                                         "sharpeningangle"};
  return std::ranges::find(kDoubtful, folded_header(header)) != kDoubtful.end();
}

std::optional<double> cuts_in_header(std::string_view header) {
  const NameAndUnit parts = name_and_unit(header);
  const bool has_unit = !parts.unit.empty() && is_reading_unit(parts.unit, {});
  std::string word = folded(has_unit ? parts.name : header);
  for (const std::string_view before : {"after", "at", "cuts", "cut"}) {
    if (word.starts_with(before)) word.erase(0, before.size());
  }
  const std::size_t behind = word.find_last_of("0123456789.") + 1;
  if (trials::counted_in_words(word.substr(behind))) word.erase(behind);
  if (word.empty()) return std::nullopt;
  const NumberCell number = number_cell(word, DecimalMark::point);
  if (number.fault != NumberFault::none || !number.unit.empty() || number.number < 0) {
    return std::nullopt;
  }
  return number.number;
}

}  // namespace keenfall::exchange
