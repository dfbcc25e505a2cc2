#include "exchange/wide_table.h"

#include "exchange/number_cell.h"
#include "exchange/row_filter.h"
#include "exchange/table_shape.h"
#include "exchange/text_lines.h"
#include "exchange/wide_header.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace keenfall::exchange {

namespace {

bool has_digit(std::string_view text) { return text.find_first_of("0123456789") != text.npos; }

class WideReading {
 public:
  WideReading(const Grid& grid, std::size_t label_column, GridReading& reading)
      : grid_(grid), label_column_(label_column), reading_(reading), header_(label_column) {}

  void sort_rows() {
    for (const GridRow& row : grid_.rows) {
      if (reading_.left_out.has(part(row.line, 0))) continue;
      const GridCell& label = row.at(label_column_);
      if (const auto meaning = meaning_by(reading_.options, label.text);
          meaning && meaning->column != Column::start_reading) {
        take_label_row(row, *meaning);
      } else if (is_doubtful_angle(label.text)) {
        report(row, label_column_, doubtful_angle(label.text));
      } else if (is_cuts(label)) {
        body_.push_back(&row);
      } else {
        take_other_row(row, label);
      }
    }
    for (const GridRow* const row : body_) find_value_columns(*row);
  }

  void check_needed_rows() {
    for (const Column column : needed_in_wide_tables()) {
      if (header_.names(column)) continue;
      is_refused_ = true;
      const std::string name(definition_of(column).name);
      reading_.problems.add(
          {reading_.problems.current_file(), 0},
          {.kind = base::ProblemKind::missing,
           .sentence = "Read as a wide table (cuts down, runs across), but no row is named " +
                       name + ". It must hold " + std::string(definition_of(column).must_hold) +
                       ", for each column. If it has another name here, say so: --column " + name +
                       "=\"...\".",
           .place = {.column = name}});
    }
    if (body_.empty()) {
      is_refused_ = true;
      if (reading_.left_out.has_any_of(reading_.problems.current_file())) return;
      reading_.problems.add({reading_.problems.current_file(), 0},
                            {.kind = base::ProblemKind::unsuitable_data,
                             .sentence = "The table has no row of readings.",
                             .accepted = "rows that begin with a number of cuts"});
    }
  }

  // Between commas one cell too many may be a decimal comma, which the row is blamed for; else the
  // column is, which nothing is said of.
  void check_widths(bool is_comma_separated) {
    if (!header_.names(Column::blade) || !header_.names(Column::run)) return;
    std::set<std::size_t> told;
    for (const GridRow* const row : body_) {
      for (std::size_t c = header_.width(); c < row->cells.size(); ++c) {
        if (row->cells[c].is_blank() || header_.is_note_column(c)) continue;
        if (reading_.left_out.covers(part(row->line, c + 1))) continue;
        if (is_comma_separated) {
          report_row(*row, c, unnamed_column(row->cells[c], c, true));
          break;
        }
        if (!told.insert(c).second) continue;
        reading_.problems.stand_in(part(0, c + 1));
        report(*row, c, unnamed_column(row->cells[c], c, false));
        reading_.problems.stand_nowhere();
      }
    }
  }

  void take_all() {
    if (is_refused_) return;
    reading_.columns = header_.columns();
    std::map<std::size_t, ExpandedRow> base_of;
    for (std::size_t c = label_column_ + 1; c < header_.width(); ++c) {
      if (header_.is_note_column(c) || !is_chosen(c)) continue;
      const bool has_readings = value_columns_.contains(c);
      if (!has_readings && !header_.tells_of(c)) continue;
      if (reading_.left_out.has(part(0, c + 1))) {
        note_left_out(c, header_.row_at(c));
        continue;
      }
      reading_.problems.stand_in(part(0, c + 1));
      if (!has_names(c)) continue;
      base_of[c] = header_.row_at(c);
      names_.insert(header_.run_at(c));
      if (has_readings) ++columns_read_;
    }
    GridCell cuts;
    for (const GridRow* const row : body_) {
      const GridCell& label = row->at(label_column_);
      if (!label.is_blank()) cuts = label;
      take_body_row(*row, cuts, base_of);
    }
    for (const auto& [c, base] : base_of) take_told_once(c, base);
    if (!reading_.left_out.has_any_of(reading_.problems.current_file())) return;
    for (const auto& [c, base] : base_of) note_left_out(c, base);
  }

  [[nodiscard]] std::vector<std::string> remarks() const {
    std::vector<std::string> remarks;
    std::string read = "Read as a wide table: cuts down, " + std::to_string(names_.size()) +
                       (names_.size() == 1 ? " run" : " runs");
    if (columns_read_ > names_.size()) {
      read += " in " + std::to_string(columns_read_) + " columns";
    }
    remarks.push_back(read + " across.");
    const std::string filled = header_.filled_rows();
    if (!filled.empty()) {
      remarks.push_back(
          "In the header, an empty cell holds what stands to its left (rows: " + filled + ").");
    }
    if (!passed_over_.empty()) remarks.push_back("Passed over: " + passed_over_ + ".");
    if (!not_used_.empty()) {
      remarks.push_back("Not used, because not understood: the rows " + not_used_ + ".");
    }
    if (left_out_ > 0) {
      remarks.push_back("Left out by --where: " + std::to_string(left_out_) +
                        (left_out_ == 1 ? " column." : " columns."));
    }
    remarks.insert(remarks.end(), beside_.begin(), beside_.end());
    for (const std::string& remark : remarks_on_cells(reading_)) remarks.push_back(remark);
    return remarks;
  }

 private:
  [[nodiscard]] TablePart part(std::size_t line, std::size_t column) const {
    return {reading_.problems.current_file(), line, column};
  }

  // The cuts of the rows beneath it may stand in this one.
  void report_row(const GridRow& row, std::size_t column_index, base::Problem problem) {
    reading_.problems.stand_in(part(row.line, 0));
    report(row, column_index, std::move(problem));
    reading_.problems.stand_nowhere();
    if (row.at(label_column_).is_blank()) return;
    for (const GridRow& beneath : grid_.rows) {
      if (beneath.line <= row.line) continue;
      if (!beneath.at(label_column_).is_blank()) break;
      const TablePart without_cuts = part(beneath.line, 0);
      reading_.problems.blame({&without_cuts, 1},
                              "The cuts of this row stand in line " + std::to_string(row.line) +
                                  ", which is left out.");
    }
  }

  void note_left_out(std::size_t c, ExpandedRow row) {
    (void)header_.tell_once(c, row);
    reading_.note_left_out(row, reading_.columns);
  }

  void report(const GridRow& row, std::size_t column_index, base::Problem problem) {
    is_refused_ = true;
    reading_.problems.add({reading_.problems.current_file(), row.line, column_index + 1},
                          std::move(problem));
  }

  [[nodiscard]] std::string row_in_words(Column column) const {
    const GridRow& row = header_.row_of(column);
    return "row " + std::to_string(row.line) + " (" + excerpt(row.at(label_column_).text) + ")";
  }

  [[nodiscard]] base::Problem unnamed_column(const GridCell& cell,
                                             std::size_t c,
                                             bool may_be_cut_in_two) const {
    return {.kind = base::ProblemKind::missing,
            .sentence = "Column " + column_letters(c + 1) +
                        " has no run name and no blade. Write the run in " +
                        row_in_words(Column::run) + " and the blade in " +
                        row_in_words(Column::blade) +
                        ", where it is not the one to its left; or clear the column." +
                        (may_be_cut_in_two
                             ? " If it is no column of its own: a decimal comma, or a comma in a "
                               "text, cuts a cell in two; put the cell in quotes, or separate the "
                               "columns with semicolons."
                             : ""),
            .place = {.found = excerpt(cell.text)}};
  }

  static base::Problem doubtful_angle(const std::string& label) {
    return {
        .kind = base::ProblemKind::conflicting,
        .sentence = in_quotes(label) + " does not say whether the angle is per side or inclusive.",
        .place = {.found = excerpt(label)},
        .accepted = "bevel angle per side (deg), or bevel angle inclusive (deg)"};
  }

  void take_label_row(const GridRow& row, const HeaderMeaning& meaning) {
    for (std::size_t c = label_column_ + 1; c < row.cells.size(); ++c) {
      const auto other = meaning_by(reading_.options, row.cells[c].text);
      if (other && other->column == Column::note) header_.add_note_column(c);
    }
    if (!header_.add(row, meaning)) {
      report(row,
             label_column_,
             {.kind = base::ProblemKind::conflicting,
              .sentence = "Two rows are named " + in_quotes(row.at(label_column_).text) +
                          ": which one holds cannot be told.",
              .place = {.found = excerpt(row.at(label_column_).text)}});
    }
  }

  [[nodiscard]] bool is_cuts(const GridCell& label) const {
    return !label.text.empty() && cuts_of(label).has_value();
  }

  // "0", "15 cuts", "after 31", "start".
  [[nodiscard]] std::optional<std::string> cuts_of(const GridCell& label) const {
    if (folded(label.text) == "start") return "0";
    // Not a stroke before a number, as in "cuts - 3": fewer cuts than none.
    const bool is_negative = label.text.starts_with('-') || label.text.starts_with("\u2212");
    if (is_negative) return std::nullopt;
    std::string text = label.text;
    if (reading_.mark == DecimalMark::comma) std::ranges::replace(text, ',', '.');
    if (!cuts_in_header(text)) return std::nullopt;
    const std::size_t first = label.text.find_first_of("0123456789");
    const std::size_t last = label.text.find_last_of("0123456789");
    return label.text.substr(first, last + 1 - first);
  }

  void take_other_row(const GridRow& row, const GridCell& label) {
    std::size_t others = 0;
    bool has_numbers = false;
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
      if (c == label_column_ || row.cells[c].is_blank() || row.cells[c].is_covered) continue;
      ++others;
      has_numbers = has_numbers || has_digit(row.cells[c].text);
    }
    if (label.is_blank() && !body_.empty() && others > 0) {
      body_.push_back(&row);  // the cuts stand above
    } else if (others > 0 && has_numbers && (has_digit(label.text) || !label.fault.empty())) {
      report_row(row,
                 label_column_,
                 {.sentence = "Here stands how many cuts were made, and " + in_quotes(label.text) +
                              " is not a number of cuts.",
                  .place = {.found = excerpt(label.text)},
                  .accepted = std::string(definition_of(Column::cuts).accepted)});
    } else if (others > 0 && !label.is_blank()) {
      not_used_ += (not_used_.empty() ? "" : ", ") + in_quotes(label.text);
    } else {
      const auto content = std::ranges::find_if_not(row.cells, &GridCell::is_blank);
      if (content == row.cells.end()) return;
      passed_over_ += (passed_over_.empty() ? "" : ", ") + in_quotes(content->text);
    }
  }

  void find_value_columns(const GridRow& row) {
    for (std::size_t c = label_column_ + 1; c < row.cells.size(); ++c) {
      if (reading_.left_out.covers(part(row.line, c + 1))) continue;
      if (!row.cells[c].is_blank() || !row.cells[c].comment.empty()) value_columns_.insert(c);
    }
  }

  bool is_chosen(std::size_t c) {
    for (const RowFilter& filter : reading_.options.where) {
      const GridRow* const row = row_named(filter.column);
      if (row == nullptr) continue;  // reported where the options are checked
      std::size_t at = c;
      while (at > label_column_ + 1 && row->at(at).is_blank()) --at;
      if (says(row->at(at).text, filter.wanted)) continue;
      if (value_columns_.contains(c)) ++left_out_;
      return false;
    }
    return true;
  }

  const GridRow* row_named(const std::string& name) {
    const ColumnDefinition* const definition = find_definition(name);
    for (const GridRow& row : grid_.rows) {
      const std::string& label = row.at(label_column_).text;
      if (folded_header(label) == folded_header(name)) return &row;
      const auto meaning = meaning_by(reading_.options, label);
      if (definition != nullptr && meaning && meaning->column == definition->column) return &row;
    }
    reading_.problems.add_once(
        "where " + name,
        {reading_.problems.current_file(), 0},
        {.kind = base::ProblemKind::unknown_name,
         .sentence = "--where names " + in_quotes(name) + ", but no row of the table is named so.",
         .place = {.found = excerpt(name)}});
    return nullptr;
  }

  bool has_names(std::size_t c) {
    bool has_all = true;
    for (const Column column : needed_in_wide_tables()) {
      const GridRow& row = header_.row_of(column);
      if (!row.at(header_.holder_of(column, c)).is_blank()) continue;
      has_all = false;
      report(row,
             c,
             {.kind = base::ProblemKind::missing,
              .sentence = std::string(definition_of(column).name) +
                          " is empty above a column of readings; it must hold " +
                          std::string(definition_of(column).must_hold) + "."});
    }
    return has_all;
  }

  void take_body_row(const GridRow& row,
                     const GridCell& cuts,
                     const std::map<std::size_t, ExpandedRow>& base_of) {
    ExpandedCell place = expanded(row, label_column_);
    place.text = cuts_of(cuts).value_or("");
    if (trials::counted_in_words(cuts.text)) place.header = cuts.text;
    const std::string so_many_cuts = so_many(place.text, counted_at(place, reading_.columns));
    for (const std::size_t c : header_.note_columns()) {
      if (row.at(c).text.empty()) continue;
      beside_.push_back("Beside the readings at " + so_many_cuts +
                        " stands: " + in_quotes(row.at(c).text) + ".");
    }
    for (const auto& [c, base] : base_of) {
      if (!stands_in(part(0, c + 1), part(row.line, c + 1), reading_)) continue;
      ExpandedRow at_cuts = base;
      at_cuts[Column::cuts] = place;
      take_reading_cell(row.at(c), expanded(row, c), header_.reading_unit(), at_cuts, reading_);
    }
  }

  void take_told_once(std::size_t c, const ExpandedRow& base) {
    reading_.problems.stand_in(part(0, c + 1));
    ExpandedRow row = base;
    row[Column::repeat] = {};
    row[Column::station] = {};
    row[Column::doubtful] = {};
    if (!header_.tell_once(c, row)) return;
    if (row[Column::lasted].text.empty() && row[Column::failed_by].text.empty()) {
      row[Column::struck] = {};
    }
    reading_.take(row, reading_.columns);
  }

  const Grid& grid_;
  std::size_t label_column_;
  GridReading& reading_;
  WideHeader header_;
  std::vector<const GridRow*> body_;
  std::set<std::size_t> value_columns_;
  std::set<std::string> names_;
  std::size_t columns_read_ = 0;
  std::size_t left_out_ = 0;
  std::string passed_over_;
  std::string not_used_;
  std::vector<std::string> beside_;
  bool is_refused_ = false;
};

}  // namespace

std::vector<std::string> take_wide_table(const Grid& grid,
                                         std::size_t label_column,
                                         bool is_comma_separated,
                                         GridReading& reading) {
  WideReading wide(grid, label_column, reading);
  wide.sort_rows();
  wide.check_needed_rows();
  wide.check_widths(is_comma_separated);
  wide.take_all();
  return wide.remarks();
}

}  // namespace keenfall::exchange
