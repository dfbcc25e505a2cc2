// A trial's answer as the app gets it: the report, all that is told of it, and the answer in a
// sentence or two. Shape: docs/wire/api.json (Judged).
#pragma once

#include "telling/report.h"
#include "wire/question.h"

#include <cstdint>
#include <string>

namespace keenfall::wire {

struct Judged {
  bool is_quick = false;      // by the quick engine
  std::int64_t of_entry = 0;  // the journal's last entry when the trial was read
  Question question;          // as it was answered: also what the plan and the usual say
  telling::Report report;
  bool can_ask_again = false;  // another level or margin is answered at once
  std::string counted_words;   // how the notebook counted it; empty: not counted
  // How much the runs scatter, where that is what was planned; empty: it was not.
  std::string own_scatter_words;
};

// In one line. Throws std::logic_error where a number is not finite, which is a fault of ours.
[[nodiscard]] std::string judged_to_json(const Judged& judged);

}  // namespace keenfall::wire
