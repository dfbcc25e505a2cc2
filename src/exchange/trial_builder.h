// Rows of one or several tables become a Trial: runs, blades, series, checked against one another.
//
// Checks what no single row can show: cuts that go backwards within a run, a repeat recorded twice,
// a blade with two steels or hardnesses, two words for what is counted. Readings of a run are
// sorted by cuts, rows at the same cuts keep their order. Every Problem goes to the list; the trial
// is worth nothing when there was one.
#pragma once

#include "exchange/counting_word.h"
#include "exchange/problem_list.h"
#include "exchange/reading_series_register.h"
#include "exchange/run_drafts.h"
#include "exchange/table_options.h"
#include "exchange/table_row.h"
#include "trials/trial.h"

#include <string>

namespace keenfall::exchange {

class TrialBuilder {
 public:
  // `options` and `problems` must outlive it.
  TrialBuilder(const TableOptions& options, ProblemList& problems)
      : problems_(problems), counting_(problems), register_(options, problems), drafts_(problems) {}

  void add(const TableRow& row, const MatchedColumns& file_columns);

  [[nodiscard]] trials::Trial finish(std::string name) &&;

 private:
  ProblemList& problems_;
  CountingWord counting_;
  ReadingSeriesRegister register_;
  RunDrafts drafts_;
};

}  // namespace keenfall::exchange
