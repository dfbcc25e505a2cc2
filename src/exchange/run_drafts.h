// Rows gathered into runs, before anything of them is settled.
//
// A run's name need only be unique within its arm. Rows with the same blade, medium and run name
// belong to one run unless some cell that makes an arm (or the specimen) differs; an empty cell
// means "as the run's other rows say". Rows whose empty cells would let them belong to two runs are
// a Problem, as is a run that names two blocks, dates, lots and so on.
#pragma once

#include "exchange/problem_list.h"
#include "exchange/run_parts.h"
#include "exchange/table_row.h"
#include "trials/trial.h"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

namespace keenfall::exchange {

// What a run's rows say in one column, and where they first say it.
struct ToldCell {
  std::string text;
  std::optional<double> number;
  Origin at;

  [[nodiscard]] bool is_blank() const { return text.empty() && !number; }
};

struct ReadingDraft {
  trials::Reading reading;  // series: an index into what was told (reading_series_register.h)
  std::size_t file = 0;
  std::size_t column = 0;   // 0: not known
  bool names_unit = false;  // beside the number or in its header, and not in a column of units
};

// Two statements of which a run can have one.
struct Contradiction {
  Column column = Column::run;
  Origin at;
  base::Problem problem;
};

struct RunDraft {
  Origin first;
  std::array<ToldCell, kColumnCount> told;  // of the columns that hold for a whole run
  // Where a row says another steel or hardness than the run's first: the first such cell.
  std::optional<ToldCell> other_steel;
  std::optional<ToldCell> other_hardness;
  std::vector<ReadingDraft> readings;  // in the order of the rows
  std::vector<trials::EdgeLife> edge_lives;
  std::vector<trials::Event> events;
  std::vector<std::string> deviations;
  std::vector<std::string> notes;
  std::optional<std::string> voided_reason;
  std::vector<Contradiction> contradictions;  // the first of each column
  RunParts parts;

  [[nodiscard]] const ToldCell& operator[](Column column) const { return told[index_of(column)]; }
};

class RunDrafts {
 public:
  // More runs than this are taken for a wrongly mapped column.
  static constexpr std::size_t kMostRuns = 100'000;

  explicit RunDrafts(ProblemList& problems) : problems_(problems) {}

  void add(const TableRow& row, const std::optional<trials::Reading>& reading);

  // The run of the rows before that name all it is known by alike; nullptr: there are none.
  [[nodiscard]] const RunDraft* begun_by(const TableRow& row) const;

  // The runs in the order in which they begin.
  [[nodiscard]] std::vector<RunDraft> runs() &&;

 private:
  void tell(RunDraft& draft, Column column, const ToldCell& cell);
  void remember_two(RunDraft& draft, Column column, const ToldCell& cell) const;
  void report_contradictions(const RunDraft& draft);
  RunDraft* draft_for(const TableRow& row);
  static void add_edge_life(RunDraft& draft, const TableRow& row);
  void merge_into(RunDraft& draft, RunDraft&& part);

  ProblemList& problems_;
  std::vector<RunDraft> parts_;  // rows that agree literally in all that makes an arm
  std::unordered_map<std::string, std::size_t> part_of_key_;
};

}  // namespace keenfall::exchange
