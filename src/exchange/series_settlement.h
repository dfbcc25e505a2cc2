// From what rows tell about their readings to the series of the trial.
//
// Within a run, and for one kind, an empty thread, lot or unit means the one the run's other rows
// name; a run that names two leaves an empty cell undecided, which is a Problem. A unit named
// nowhere is the kind's own. In the end all readings of one kind and thread are in one unit: the
// first met, runs being taken in their order and readings by their cuts.
#pragma once

#include "exchange/problem_list.h"
#include "exchange/reading_series_register.h"
#include "exchange/run_drafts.h"
#include "trials/trial.h"

#include <set>
#include <string>
#include <vector>

namespace keenfall::exchange {

class SeriesSettlement {
 public:
  SeriesSettlement(ReadingSeriesRegister& told, ProblemList& problems)
      : register_(told), problems_(problems) {}

  // Fills the blanks of one run's readings from its other rows.
  void fill_blanks(std::vector<ReadingDraft>& readings);

  // Gives the trial its series and converts its readings.
  void settle(trials::Trial& trial);

 private:
  std::string only_unit(const SeriesAsTold& told, const std::set<std::string>& of_run, Origin at);
  void report_undecided(Origin at, const char* column, const std::set<std::string>& candidates);
  void remark(trials::Trial& trial) const;

  ReadingSeriesRegister& register_;
  ProblemList& problems_;
  std::set<std::string> remarks_;
};

}  // namespace keenfall::exchange
