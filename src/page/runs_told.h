// Every run that a judgement is about, used or not, in the order of the trial.
#pragma once

#include "telling/report.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::page {

struct ToldRun {
  const verdicts::RunResult* result = nullptr;
  std::string key;  // by which the pictures know it; empty: it is in none
  std::string edge;
  std::string medium;
  std::size_t recorded = 0;  // readings of what is judged, whatever became of them
};

// judgement_index: into the report's judgements. The results stay the report's.
[[nodiscard]] std::vector<ToldRun> runs_told(const telling::Report& report,
                                             std::size_t judgement_index);

// Is the series among what the judgement is about? A pass ladder is judged whatever its thread.
[[nodiscard]] bool is_of(const trials::ReadingSeries& series, const verdicts::Judgement& judgement);

}  // namespace keenfall::page
