// One table after another, from bytes to rows, into one trial.
//
// Finds out a table's separator, shape, columns and decimal mark, then hands its rows to the
// TrialBuilder; those of a wide table or one with a line a run are taken apart first. Long text is
// read row by row, everything else from a grid.
// Tables with the same bytes are refused as given twice.
#pragma once

#include "base/result.h"
#include "exchange/delimited_text.h"
#include "exchange/expanded_row.h"
#include "exchange/grid.h"
#include "exchange/problem_list.h"
#include "exchange/spreadsheet_file.h"
#include "exchange/table_options.h"
#include "exchange/table_row.h"
#include "exchange/table_shape.h"
#include "exchange/trial_builder.h"
#include "trials/trial.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace keenfall::exchange {

class TableIntake {
 public:
  // Of all tables together: what a small machine holds without swapping (1 GB).
  static constexpr std::size_t kMostRows = 5'000'000;

  // Keeps a reference to `options`, which must outlive it.
  explicit TableIntake(const TableOptions& options);

  // The bytes, for whoever wants to know them again; nothing where the file cannot be read.
  std::optional<std::string> take_file(const std::string& path);
  void take_bytes(std::string_view bytes, const std::string& file_name);

  [[nodiscard]] base::ResultOrProblems<trials::Trial> finish(std::string name) &&;

 private:
  // Which shape the text has, and between what its cells stand.
  struct Recognised {
    char delimiter = ',';
    RecognisedShape shape;
  };

  void check_options();
  void take_content(std::string_view bytes, const std::string& file_name);
  void take_text(std::string_view text);
  void take_spreadsheet(std::string_view bytes, const std::string& file_name);
  std::vector<std::size_t> chosen_sheets(const std::vector<Sheet>& sheets);
  std::vector<std::size_t> named_sheets(const std::vector<Sheet>& sheets);
  void take_sheet(Sheet sheet, const std::string& file_name, bool is_one_of_several);
  std::optional<Recognised> recognise(std::string_view text);
  void take_long_text(std::string_view text, const Recognised& as);
  void take_grid(Grid grid, const RecognisedShape& shape, char delimiter);
  void take_long_grid(const Grid& grid, std::size_t header_row, DecimalMark mark);
  void take_expanded(const ExpandedRow& row, const MatchedColumns& columns, DecimalMark mark);
  std::optional<DecimalMark> decimal_mark_of_text(std::string_view text,
                                                  const Recognised& as,
                                                  const MatchedColumns& columns);
  bool is_too_long(std::size_t line);
  void remark_on(const MatchedColumns& columns, const DelimitedReader& reader);
  void remark_on_comments(const DelimitedReader& reader);
  void report(base::Problem problem);
  void append_remarks(const std::vector<std::string>& remarks);

  const TableOptions& options_;
  ProblemList problems_;
  TrialBuilder builder_;
  std::unordered_map<std::size_t, std::string> file_with_hash_;
  std::vector<std::string> remarks_;
  std::size_t row_count_ = 0;
};

}  // namespace keenfall::exchange
