// What the app's first page shows of each trial: where its path stands, what comes next, and the
// newest answer in a sentence. Values; the jobs that make them are in workbench.
// Shapes: docs/wire/api.json (Step, Answer, TrialCard, Home).
#pragma once

#include "telling/sentence.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::wire {

enum class StepName { ask, plan, judge, tell };
// next: what to do now; ready: can be done; waiting: something else comes first.
enum class StepState { done, next, ready, waiting };

struct Step {
  StepName step = StepName::ask;
  StepState state = StepState::waiting;
  std::string words;  // where it stands, in a short sentence

  bool operator==(const Step&) const = default;
};

struct Path {
  std::vector<Step> steps;  // ask, plan, judge, tell
  Step next;

  bool operator==(const Path&) const = default;
};

struct Answer {
  telling::Sentence sentence;
  std::optional<telling::Sentence> more;  // how the other comparisons came out
  bool of_now = true;                     // false: readings were added or struck since
  bool is_judged = true;                  // false: the sentence says why it is not
  std::string judged_at_utc;              // empty: a quick look, not counted

  bool operator==(const Answer&) const = default;
};

struct TrialCard {
  std::string uid;
  std::string name;
  std::size_t runs = 0;
  std::size_t readings = 0;
  std::string claim;  // empty: none
  Path path;
  std::optional<Answer> answer;

  bool operator==(const TrialCard&) const = default;
};

struct Undoable {
  std::int64_t entry = 0;
  std::string what;

  bool operator==(const Undoable&) const = default;
};

struct Home {
  std::string name;                // of the file
  std::vector<TrialCard> trials;   // newest first
  std::int64_t last_entry = 0;     // of the journal; 0: none
  std::optional<Undoable> undoes;  // what undo would take back

  bool operator==(const Home&) const = default;
};

// Each: one JSON object in one line. Bytes that are not UTF-8 become U+FFFD.
[[nodiscard]] std::string home_to_json(const Home& home);
[[nodiscard]] std::string answer_to_json(const Answer& answer);

}  // namespace keenfall::wire
