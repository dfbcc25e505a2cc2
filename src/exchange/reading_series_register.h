// What rows tell about the making of their readings: kind, unit, thread and thread lot.
//
// In: rows. Out: readings whose series is an index into what was told. Refused: unknown kinds,
// units of another dimension, readings a kind cannot have (negative, zero, above its largest). A
// row that names no kind has the one said for the table, or is a thread push where its unit allows
// it. Blanks are filled and series settled afterwards: series_settlement.h.
#pragma once

#include "exchange/problem_list.h"
#include "exchange/table_options.h"
#include "exchange/table_row.h"
#include "trials/trial.h"

#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace keenfall::exchange {

// Empty: not told.
struct SeriesAsTold {
  const trials::ReadingKind* kind = nullptr;
  std::string unit;
  std::string thread;
  std::string thread_lot;

  auto operator<=>(const SeriesAsTold&) const = default;
};

class ReadingSeriesRegister {
 public:
  // Keeps pointers into `options`, which must outlive it.
  ReadingSeriesRegister(const TableOptions& options, ProblemList& problems);

  // The reading of a row, its series being an index into what was told; nullopt when kind, unit or
  // size of the reading were refused. `file_columns` names the headers.
  [[nodiscard]] std::optional<trials::Reading> take(const TableRow& row,
                                                    const MatchedColumns& file_columns);

  [[nodiscard]] const std::vector<SeriesAsTold>& told() const { return told_; }
  [[nodiscard]] std::size_t index_of_told(const SeriesAsTold& told);
  // All units that rows name for readings of this kind, but for odd ones.
  [[nodiscard]] std::set<std::string> units_of(const trials::ReadingKind* kind) const;
  // Whether the unit of one reading counts among them.
  void count_unit(const trials::ReadingKind* kind, const std::string& unit, bool counts);

  [[nodiscard]] const std::vector<std::string>& remarks() const { return remarks_; }

 private:
  const trials::ReadingKind* kind_of(const TableRow& row, const MatchedColumns& file_columns);
  bool is_in_digits(const TableRow& row, const MatchedColumns& file_columns);
  bool is_size_taken(const TableRow& row,
                     const trials::ReadingKind& kind,
                     const std::string& unit,
                     const MatchedColumns& file_columns);
  std::optional<std::string> unit_of(const TableRow& row,
                                     const trials::ReadingKind& kind,
                                     const MatchedColumns& file_columns);
  void remark_once(const std::string& remark);

  const TableOptions& options_;
  ProblemList& problems_;
  std::vector<SeriesAsTold> told_;
  std::map<SeriesAsTold, std::size_t> index_;
  // How many readings are told in each.
  std::map<const trials::ReadingKind*, std::map<std::string, std::size_t>> units_told_;
  std::vector<std::string> remarks_;
};

}  // namespace keenfall::exchange
