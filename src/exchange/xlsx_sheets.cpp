#include "exchange/sheet_cells.h"
#include "exchange/text_lines.h"
#include "exchange/workbook_formats.h"
#include "exchange/xlsx_styles.h"
#include "exchange/xml_reader.h"

#include <charconv>
#include <map>
#include <optional>
#include <utility>

namespace keenfall::exchange {

namespace {

using Found = XmlReader::Found;

struct Relation {
  std::string type;    // its last word: "worksheet", "comments"
  std::string target;  // a part's name
};
using Relations = std::map<std::string, Relation>;  // by id

// What a sheet's cells refer to.
struct Workbook {
  std::vector<std::string> shared_texts;
  std::vector<NumberLook> looks;
  bool is_from_1904 = false;
};

struct NamedSheet {
  std::string name;
  std::string id;
  bool is_hidden = false;
};

std::string folder_of(const std::string& part) {
  const std::size_t slash = part.rfind('/');
  return slash == part.npos ? "" : part.substr(0, slash + 1);
}

// "../comments1.xml" seen from "xl/worksheets/".
std::string resolved(std::string folder, std::string target) {
  if (target.starts_with('/')) return target.substr(1);
  while (target.starts_with("../")) {
    target.erase(0, 3);
    if (!folder.empty()) folder.pop_back();
    folder = folder_of(folder);
  }
  return folder + target;
}

Relations relations_of(const SpreadsheetArchive& archive, const std::string& part) {
  Relations relations;
  const std::string folder = folder_of(part);
  const auto text = archive.part(folder + "_rels/" + part.substr(folder.size()) + ".rels");
  if (!text) return relations;
  XmlReader xml(*text);
  for (auto found = xml.next(); found != Found::done && found != Found::broken;
       found = xml.next()) {
    if (found != Found::start || xml.name() != "Relationship") continue;
    const std::string type = xml.attribute("Type");
    relations[xml.attribute("Id")] = {.type = type.substr(type.rfind('/') + 1),
                                      .target = resolved(folder, xml.attribute("Target"))};
  }
  return relations;
}

std::string target_of(const Relations& relations, std::string_view type) {
  for (const auto& [id, relation] : relations) {
    if (relation.type == type) return relation.target;
  }
  return {};
}

// The texts of each <si> or <comment>, without phonetic hints.
class TextRuns {
 public:
  void take(Found found, const XmlReader& xml) {
    if (found == Found::start && xml.name() == "rPh") ++hints_;
    if (found == Found::end && xml.name() == "rPh") --hints_;
    if (found != Found::text) in_text_ = found == Found::start && xml.name() == "t";
    if (found == Found::text && in_text_ && hints_ == 0) text_ += xml.text();
  }
  [[nodiscard]] std::string taken() { return std::exchange(text_, {}); }

 private:
  std::string text_;
  int hints_ = 0;
  bool in_text_ = false;
};

std::optional<std::vector<std::string>> shared_texts_in(std::string_view text) {
  std::vector<std::string> texts;
  TextRuns runs;
  XmlReader xml(text);
  for (auto found = xml.next(); found != Found::done; found = xml.next()) {
    if (found == Found::broken) return std::nullopt;
    runs.take(found, xml);
    if (found == Found::end && xml.name() == "si") texts.push_back(runs.taken());
  }
  return texts;
}

std::optional<double> number_in(const std::string& text) {
  double number = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (fault != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return number;
}

// One <c> element as it is read.
struct CellDraft {
  CellPlace place;
  std::string type;
  std::size_t style = 0;
  std::string value;
  std::string inline_text;
  bool has_formula = false;
};

GridCell cell_of(const CellDraft& draft, const Workbook& book) {
  if (draft.type == "inlineStr") return {.text = draft.inline_text};
  if (draft.value.empty()) {
    return draft.has_formula ? GridCell{.fault = uncalculated_fault()} : GridCell{};
  }
  if (draft.type == "e") return {.text = draft.value, .fault = error_fault(draft.value)};
  if (draft.type == "b") return {.text = draft.value == "1" ? "TRUE" : "FALSE"};
  if (draft.type == "str" || draft.type == "d") return {.text = draft.value};
  const auto number = number_in(draft.value);
  if (!number) return {.text = draft.value};
  if (draft.type == "s") {
    const bool is_there = *number >= 0 && *number < static_cast<double>(book.shared_texts.size());
    return {.text = is_there ? book.shared_texts[static_cast<std::size_t>(*number)] : ""};
  }
  const NumberLook look =
      draft.style < book.looks.size() ? book.looks[draft.style] : NumberLook::plain;
  if (look == NumberLook::date) return {.text = date_of_serial(*number, book.is_from_1904)};
  return number_grid_cell(*number, look == NumberLook::percent);
}

class SheetReading {
 public:
  SheetReading(const Workbook& book, SheetRoom& room) : book_(book), cells_(room) {}

  // False when the text is broken or there are too many cells.
  bool take(std::string_view text) {
    XmlReader xml(text);
    for (auto found = xml.next(); found != Found::done; found = xml.next()) {
      if (found == Found::broken) return false;
      if (found == Found::start) start(xml);
      if (found == Found::text) append(xml.text());
      if (found == Found::end && !end(xml.name())) {
        is_too_large_ = true;
        return false;
      }
    }
    return true;
  }

  [[nodiscard]] bool is_too_large() const { return is_too_large_; }
  [[nodiscard]] SheetCells& cells() { return cells_; }

 private:
  void start(const XmlReader& xml) {
    element_ = xml.name();
    if (element_ == "row") {
      const auto row = number_in(xml.attribute("r"));
      row_ = row && *row >= 1 && *row < 1e7 ? static_cast<std::size_t>(*row) : row_ + 1;
      column_ = 0;
    } else if (element_ == "c") {
      draft_ = {.place = cell_place(xml.attribute("r")), .type = xml.attribute("t")};
      if (draft_.place.row == 0) draft_.place = {.row = row_, .column = column_ + 1};
      column_ = draft_.place.column;
      draft_.style = static_cast<std::size_t>(number_in(xml.attribute("s")).value_or(0));
    } else if (element_ == "f") {
      draft_.has_formula = true;
    } else if (element_ == "mergeCell") {
      const std::string range = xml.attribute("ref");
      const std::size_t colon = range.find(':');
      if (colon != range.npos) {
        cells_.merge(cell_place(range.substr(0, colon)), cell_place(range.substr(colon + 1)));
      }
    }
  }

  void append(const std::string& text) {
    if (element_ == "v") draft_.value += text;
    if (element_ == "t") draft_.inline_text += text;
  }

  bool end(std::string_view name) {
    element_ = {};
    return name != "c" || cells_.put(draft_.place, cell_of(draft_, book_));
  }

  const Workbook& book_;
  SheetCells cells_;
  CellDraft draft_;
  std::string_view element_;
  std::size_t row_ = 0;
  std::size_t column_ = 0;
  bool is_too_large_ = false;
};

void take_comments(std::string_view text, SheetCells& cells) {
  TextRuns runs;
  CellPlace place;
  XmlReader xml(text);
  for (auto found = xml.next(); found != Found::done && found != Found::broken;
       found = xml.next()) {
    runs.take(found, xml);
    if (xml.name() != "comment" || found == Found::text) continue;
    if (found == Found::start) place = cell_place(xml.attribute("ref"));
    if (found == Found::end) cells.comment(place, runs.taken());
  }
}

base::Result<Sheet> sheet_of(const SpreadsheetArchive& archive,
                             const NamedSheet& named,
                             const Relations& relations,
                             const Workbook& book,
                             SheetRoom& room) {
  const auto relation = relations.find(named.id);
  Sheet sheet{.name = named.name, .grid = {.is_sheet = true}, .is_hidden = named.is_hidden};
  if (relation == relations.end()) {
    return base::failed(damaged_spreadsheet("its sheet " + excerpt(named.name) + " is not there"));
  }
  if (relation->second.type != "worksheet") return sheet;  // a chart
  const auto text = archive.part(relation->second.target);
  if (!text) return base::failed(text.error());
  SheetReading reading(book, room);
  if (!reading.take(*text)) {
    return base::failed(
        reading.is_too_large()
            ? too_many_cells()
            : damaged_spreadsheet("its sheet " + excerpt(named.name) + " is broken"));
  }
  const std::string comments =
      target_of(relations_of(archive, relation->second.target), "comments");
  if (!comments.empty()) {
    const auto words = archive.part(comments);
    if (!words) return base::failed(words.error());
    take_comments(*words, reading.cells());
  }
  sheet.grid = std::move(reading.cells()).grid();
  return sheet;
}

base::Result<Workbook> workbook_of(const SpreadsheetArchive& archive, const Relations& relations) {
  Workbook book;
  if (const std::string part = target_of(relations, "sharedStrings"); archive.has(part)) {
    const auto text = archive.part(part);
    if (!text) return base::failed(text.error());
    auto texts = shared_texts_in(*text);
    if (!texts) return base::failed(damaged_spreadsheet("its list of texts is broken"));
    book.shared_texts = std::move(*texts);
  }
  if (const std::string part = target_of(relations, "styles"); archive.has(part)) {
    const auto text = archive.part(part);
    if (!text) return base::failed(text.error());
    book.looks = looks_of_styles(*text);
  }
  return book;
}

}  // namespace

base::Result<std::vector<Sheet>> sheets_of_xlsx(const SpreadsheetArchive& archive) {
  const std::string part = "xl/workbook.xml";
  const auto text = archive.part(part);
  if (!text) return base::failed(text.error());
  const Relations relations = relations_of(archive, part);
  auto book = workbook_of(archive, relations);
  if (!book) return base::failed(book.error());
  std::vector<NamedSheet> names;
  XmlReader xml(*text);
  for (auto found = xml.next(); found != Found::done; found = xml.next()) {
    if (found == Found::broken) {
      return base::failed(damaged_spreadsheet("its list of sheets is broken"));
    }
    if (found != Found::start) continue;
    if (xml.name() == "workbookPr") {
      const std::string is_1904 = xml.attribute("date1904");
      book->is_from_1904 = is_1904 == "1" || is_1904 == "true";
    } else if (xml.name() == "sheet") {
      const std::string state = xml.attribute("state");
      names.push_back({.name = xml.attribute("name"),
                       .id = xml.attribute("r:id"),
                       .is_hidden = !state.empty() && state != "visible"});
    }
  }
  std::vector<Sheet> sheets;
  SheetRoom room;
  for (const NamedSheet& named : names) {
    auto sheet = sheet_of(archive, named, relations, *book, room);
    if (!sheet) return base::failed(sheet.error());
    sheets.push_back(std::move(*sheet));
  }
  return sheets;
}

}  // namespace keenfall::exchange
