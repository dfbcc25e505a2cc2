// Counting a judging as a look: with its question and its answer in the notebook, and a caution
// where the readings were looked at more often than was planned.
//
// Whether it could be kept decides nothing about the answer, so nothing fails here.
#pragma once

#include "notebook/looks.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"
#include "workbench/judge_options.h"
#include "workbench/notebook_opening.h"

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::workbench {

struct JudgedBy {
  Hand hand;
  std::string program_version;  // "0.1.0"
  // How long to wait for another who writes, before a judging goes uncounted.
  std::chrono::milliseconds patience{2000};
};

// The trial as it was read, before it was judged.
struct TrialLookedAt {
  std::string notebook;  // its path
  const trials::Trial& trial;
  const std::vector<notebook::Look>& looks;  // there were; of their answers nothing matters
  std::int64_t last_entry = 0;               // of the journal
  // Whether the same question about the same readings stays one look, as on a page that is looked
  // at again and again; else each judging is one.
  bool is_counted_once = false;
};

struct CountedLook {
  std::string kept_words;              // how the notebook counted it, or why not; in sentences
  std::optional<std::string> caution;  // to be said with the answer
};

// Which readings were judged: of long_table_of.
[[nodiscard]] notebook::JudgedInputs inputs_of(const trials::Trial& trial);

// The question as it would be typed; what is left out is as it is without being asked for.
[[nodiscard]] std::string question_of(const JudgeOptions& options);

[[nodiscard]] CountedLook count_look(const TrialLookedAt& seen,
                                     const JudgeOptions& options,
                                     const JudgedBy& by,
                                     const std::vector<verdicts::Judgement>& judgements);

}  // namespace keenfall::workbench
