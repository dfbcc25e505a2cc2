#include "exchange/sheet_cells.h"
#include "exchange/workbook_formats.h"
#include "exchange/xml_reader.h"

#include <algorithm>
#include <charconv>
#include <optional>
#include <utility>

namespace keenfall::exchange {

namespace {

using Found = XmlReader::Found;

// A repeat of cells with content beyond this only serves to fill a sheet's end with nothing.
constexpr std::size_t kMostRepeats = 1000;

std::size_t count_in(const std::string& text) {
  std::size_t count = 1;
  (void)std::from_chars(text.data(), text.data() + text.size(), count);
  return std::max<std::size_t>(1, std::min<std::size_t>(count, 2'000'000));
}

struct OdsCell {
  std::size_t column = 0;
  std::size_t repeats = 1;
  std::size_t columns_spanned = 1;
  std::size_t rows_spanned = 1;
  std::string type;
  std::string value;
  bool has_formula = false;
  std::string text;
  std::string comment;
  bool has_text = false;
};

std::optional<double> number_in_ods(const std::string& text) {
  double number = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (fault != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return number;
}

bool is_error(const std::string& text) {
  return text.starts_with("#") && (text.ends_with("!") || text.ends_with("?") || text == "#N/A");
}

GridCell grid_cell_of(const OdsCell& cell) {
  GridCell made{.comment = cell.comment};
  const auto number = number_in_ods(cell.value);
  if (is_error(cell.text) || (cell.has_formula && cell.text.starts_with("Err:"))) {
    made.text = cell.text;
    made.fault = error_fault(cell.text);
  } else if (number &&
             (cell.type == "float" || cell.type == "currency" || cell.type == "percentage")) {
    const GridCell shown = number_grid_cell(*number, cell.type == "percentage");
    made.text = shown.text;
    made.is_number = true;
  } else if (cell.type == "date") {
    made.text = cell.value;
    if (made.text.ends_with("T00:00:00")) made.text.erase(made.text.find('T'));
  } else if (cell.type == "boolean") {
    made.text = cell.value == "true" ? "TRUE" : "FALSE";
  } else {
    made.text = cell.has_text ? cell.text : cell.value;
    if (made.text.empty() && cell.has_formula && cell.type.empty()) {
      made.fault = uncalculated_fault();
    }
  }
  return made;
}

class OdsReading {
 public:
  [[nodiscard]] base::Result<std::vector<Sheet>> sheets(std::string_view text) {
    XmlReader xml(text);
    for (auto found = xml.next(); found != Found::done; found = xml.next()) {
      if (found == Found::broken) {
        return base::failed(damaged_spreadsheet("its content is broken"));
      }
      if (found == Found::start) start(xml);
      if (found == Found::text) append(xml.text());
      if (found == Found::end) end(xml.name());
      if (is_too_large_) return base::failed(too_many_cells());
    }
    return std::move(sheets_);
  }

 private:
  void start(const XmlReader& xml) {
    const std::string_view name = xml.name();
    if (name == "table" && depth_++ == 0) {
      sheets_.push_back({.name = xml.attribute("table:name")});
      cells_ = SheetCells(room_);
      row_ = 1;
    } else if (name == "table-row") {
      row_repeats_ = count_in(xml.attribute("table:number-rows-repeated"));
      row_cells_.clear();
      column_ = 1;
    } else if (name == "table-cell" || name == "covered-table-cell") {
      start_cell(xml);
    } else if (name == "annotation") {
      ++annotations_;
    } else if (name == "p" || name == "h") {
      std::string& words = annotations_ > 0 ? cell_.comment : cell_.text;
      if (!words.empty()) words += '\n';
      in_paragraph_ = true;
      if (annotations_ == 0) cell_.has_text = true;
    } else if (in_paragraph_ && (name == "s" || name == "tab" || name == "line-break")) {
      append(name == "s"
                 ? std::string(std::min<std::size_t>(count_in(xml.attribute("text:c")), 80), ' ')
                 : std::string(" "));
    }
  }

  void start_cell(const XmlReader& xml) {
    cell_ = {.column = column_,
             .repeats = count_in(xml.attribute("table:number-columns-repeated")),
             .columns_spanned = count_in(xml.attribute("table:number-columns-spanned")),
             .rows_spanned = count_in(xml.attribute("table:number-rows-spanned")),
             .type = xml.attribute("office:value-type"),
             .has_formula = !xml.attribute("table:formula").empty()};
    for (const char* name : {"office:value",
                             "office:date-value",
                             "office:time-value",
                             "office:boolean-value",
                             "office:string-value"}) {
      if (cell_.value.empty()) cell_.value = xml.attribute(name);
    }
    if (xml.name() == "covered-table-cell") cell_.type = "covered";
  }

  void append(const std::string& text) {
    if (!in_paragraph_) return;
    (annotations_ > 0 ? cell_.comment : cell_.text) += text;
  }

  void end(std::string_view name) {
    if (name == "p" || name == "h") {
      in_paragraph_ = false;
    } else if (name == "annotation" && annotations_ > 0) {
      --annotations_;
    } else if (name == "table-cell" || name == "covered-table-cell") {
      column_ += cell_.repeats;
      if (cell_.type != "covered") row_cells_.push_back(std::move(cell_));
      cell_ = {};
    } else if (name == "table-row") {
      end_row();
    } else if (name == "table" && depth_ > 0 && --depth_ == 0 && !sheets_.empty()) {
      sheets_.back().grid = std::move(cells_).grid();
      cells_ = SheetCells(room_);
    }
  }

  void end_row() {
    for (const OdsCell& cell : row_cells_) {
      const GridCell made = grid_cell_of(cell);
      if (made.is_blank() && made.comment.empty()) continue;
      for (std::size_t r = 0; r < std::min(row_repeats_, kMostRepeats); ++r) {
        for (std::size_t c = 0; c < std::min(cell.repeats, kMostRepeats); ++c) {
          const CellPlace place{.row = row_ + r, .column = cell.column + c};
          if (!cells_.put(place, made)) is_too_large_ = true;
        }
        if (is_too_large_) return;
      }
      if (cell.columns_spanned > 1 || cell.rows_spanned > 1) {
        cells_.merge({.row = row_, .column = cell.column},
                     {.row = row_ + cell.rows_spanned - 1,
                      .column = cell.column + cell.columns_spanned - 1});
      }
    }
    row_ += row_repeats_;
    row_cells_.clear();
  }

  std::vector<Sheet> sheets_;
  SheetRoom room_;
  SheetCells cells_{room_};
  OdsCell cell_;
  std::vector<OdsCell> row_cells_;
  std::size_t row_ = 1;
  std::size_t row_repeats_ = 1;
  std::size_t column_ = 1;
  int depth_ = 0;
  int annotations_ = 0;
  bool in_paragraph_ = false;
  bool is_too_large_ = false;
};

}  // namespace

base::Result<std::vector<Sheet>> sheets_of_ods(const SpreadsheetArchive& archive) {
  if (archive.has("META-INF/manifest.xml")) {
    const auto manifest = archive.part("META-INF/manifest.xml");
    if (manifest && manifest->find("encryption-data") != std::string::npos) {
      return base::failed(
          {.kind = base::ProblemKind::unreadable,
           .sentence = "The spreadsheet is protected by a password. Save it without one.",
           .accepted = "an .xlsx or .ods file without a password, or a CSV file"});
    }
  }
  const auto text = archive.part("content.xml");
  if (!text) return base::failed(text.error());
  return OdsReading().sheets(*text);
}

}  // namespace keenfall::exchange
