// One table after another, from bytes to rows, into one trial.
//
// Finds out a table's separator, columns and decimal mark, then hands its rows to the TrialBuilder.
// Tables with the same bytes are refused as given twice.
#pragma once

#include "base/result.h"
#include "exchange/problem_list.h"
#include "exchange/table_options.h"
#include "exchange/table_row.h"
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

  void take_file(const std::string& path);
  void take_bytes(std::string_view bytes, const std::string& file_name);

  [[nodiscard]] base::ResultOrProblems<trials::Trial> finish(std::string name) &&;

 private:
  void check_options();
  void take_content(std::string_view bytes, const std::string& file_name);
  void take_text(std::string_view text, char delimiter);
  std::optional<DecimalMark> decimal_mark_of(std::string_view text,
                                             char delimiter,
                                             const MatchedColumns& columns);
  void remark_on(const MatchedColumns& columns, const DelimitedReader& reader);
  void report(base::Problem problem);

  const TableOptions& options_;
  ProblemList problems_;
  TrialBuilder builder_;
  std::unordered_map<std::size_t, std::string> file_with_hash_;
  std::vector<std::string> remarks_;
  std::size_t row_count_ = 0;
};

}  // namespace keenfall::exchange
