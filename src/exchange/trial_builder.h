// Rows of one or several tables become a Trial: runs, blades, series, checked against one another.
//
// Checks what no single row can show: cuts that go backwards within a run, a repeat recorded twice,
// a blade with two steels or hardnesses, two words for what is counted. Readings of a run are
// sorted by cuts, rows at the same cuts keep their order. Every Problem goes to the list, blamed on
// rows or whole runs; the trial is worth nothing when there was one.
#pragma once

#include "exchange/counting_word.h"
#include "exchange/left_out_rows.h"
#include "exchange/problem_list.h"
#include "exchange/reading_series_register.h"
#include "exchange/run_drafts.h"
#include "exchange/table_options.h"
#include "exchange/table_row.h"
#include "trials/trial.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::exchange {

class TrialBuilder {
 public:
  // `options` and `problems` must outlive it.
  TrialBuilder(const TableOptions& options, ProblemList& problems)
      : problems_(problems), counting_(problems), register_(options, problems), drafts_(problems) {}

  void add(const TableRow& row, const MatchedColumns& file_columns);
  // Of a row that is left out: so that no run is taken that misses what only it says.
  void note_left_out(const TableRow& row);

  [[nodiscard]] trials::Trial finish(std::string name) &&;

 private:
  void notice_bare_finishes(std::span<const RunDraft> drafts);

  ProblemList& problems_;
  CountingWord counting_;
  ReadingSeriesRegister register_;
  RunDrafts drafts_;
  LeftOutRows left_out_;
  std::vector<std::string> reading_headers_;  // by file
  std::vector<std::string> finish_headers_;
};

}  // namespace keenfall::exchange
