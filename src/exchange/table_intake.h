// One table after another, from bytes to rows, into one trial.
//
// Finds out a table's separator, shape, columns and decimal mark, then hands its rows to the
// TrialBuilder; those of a wide table or one with a line a run are taken apart first. Long text is
// read row by row, everything else from a grid.
// Tables with the same bytes are refused as given twice. Where bad rows are to be left out, tables
// are taken again and again, each time without what was blamed the time before: good_rows.cpp.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "exchange/delimited_text.h"
#include "exchange/expanded_row.h"
#include "exchange/grid.h"
#include "exchange/problem_list.h"
#include "exchange/spreadsheet_file.h"
#include "exchange/table_in_hand.h"
#include "exchange/table_options.h"
#include "exchange/table_row.h"
#include "exchange/table_seen.h"
#include "exchange/table_shape.h"
#include "exchange/trial_builder.h"
#include "trials/trial.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

namespace keenfall::exchange {

class TableIntake {
 public:
  // Of all tables together: what a small machine holds without swapping (1 GB).
  static constexpr std::size_t kMostRows = 5'000'000;

  // Keeps a reference to `options`, which must outlive it.
  explicit TableIntake(const TableOptions& options);
  // Without these parts, as if they had been deleted, and blaming parts for problems. Keeps a
  // reference to `left_out`, too.
  TableIntake(const TableOptions& options, const TableParts& left_out);

  // For who shows each problem beside its cell: as many are listed, none for several rows.
  void list_each_problem(std::size_t most) { problems_.list_each(most); }

  // Told how far the rows are read; where it asks to stop, what is left is not read, and a problem
  // says so.
  void watch(base::ProgressReport progress) { progress_ = std::move(progress); }

  [[nodiscard]] bool is_stopped() const { return is_stopped_; }

  // The bytes, for whoever wants to know them again; nothing where the file cannot be read.
  std::optional<std::string> take_file(const std::string& path);
  void take_bytes(std::string_view bytes, const std::string& file_name);
  void take_table(const TableInHand& table);

  [[nodiscard]] base::ResultOrProblems<trials::Trial> finish(std::string name) &&;

  // For who wants to know what is blamed: the trial is worth something where there is no problem.
  // Runs are looked at only where every row for itself is good.
  struct Intake {
    trials::Trial trial;
    ProblemList problems;
    std::vector<TableSeen> seen{};  // as the files of `problems`
  };
  [[nodiscard]] Intake finish_blaming(std::string name) &&;

 private:
  // Which shape the text has, and between what its cells stand.
  struct Recognised {
    char delimiter = ',';
    RecognisedShape shape;
  };

  void check_options();
  void begin_source(const std::string& name);
  void begin_sheet(const std::string& file_name, const std::string& sheet);
  void take_content(std::string_view bytes, const std::string& file_name, char delimiter);
  void take_text(std::string_view text, char delimiter);
  void take_spreadsheet(std::string_view bytes, const std::string& file_name);
  std::vector<std::size_t> chosen_sheets(const std::vector<Sheet>& sheets);
  std::vector<std::size_t> named_sheets(const std::vector<Sheet>& sheets);
  void take_sheet(Sheet sheet, const std::string& file_name, bool is_one_of_several);
  std::optional<Recognised> recognise(std::string_view text, char delimiter);
  void see(const RecognisedShape& shape, char delimiter);
  void take_long_text(std::string_view text, const Recognised& as);
  void take_grid(Grid grid, const RecognisedShape& shape, char delimiter);
  void take_long_grid(const Grid& grid, std::size_t header_row, DecimalMark mark);
  void take_row(const Record& record, const RowFormat& format);
  void take_expanded(const ExpandedRow& row, const MatchedColumns& columns, DecimalMark mark);
  void note_expanded(const ExpandedRow& row, const MatchedColumns& columns, DecimalMark mark);
  std::optional<DecimalMark> decimal_mark_of_text(std::string_view text,
                                                  const Recognised& as,
                                                  const MatchedColumns& columns);
  bool is_too_long(std::size_t line);
  bool is_to_stop(std::size_t line);
  void remark_on(const MatchedColumns& columns, const DelimitedReader& reader);
  void remark_on_comments(const DelimitedReader& reader);
  void report(base::Problem problem);
  void append_remarks(const std::vector<std::string>& remarks);

  [[nodiscard]] TablePart part_of(std::size_t line) const {
    return {problems_.current_file(), line, 0};
  }

  const TableOptions& options_;
  const TableParts& left_out_;
  ProblemList problems_;
  TrialBuilder builder_;
  std::unordered_map<std::size_t, std::string> file_with_hash_;
  std::vector<std::string> remarks_;
  std::vector<TableSeen> seen_;
  std::size_t source_count_ = 0;
  std::size_t row_count_ = 0;
  base::ProgressReport progress_ = base::unwatched();
  std::size_t last_line_ = 0;  // of the table that is read
  bool is_stopped_ = false;
};

// Each is a like share of the work.
void take_each(std::span<const TableInHand> tables,
               const base::ProgressReport& progress,
               TableIntake& intake);

}  // namespace keenfall::exchange
