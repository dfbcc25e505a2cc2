// For tests: what is to be seen of a notebook after each step where nothing goes wrong, to hold
// against what is there after something did.
#pragma once

#include "notebook/random_changes.h"

#include <vector>

namespace keenfall::notebook::testing {

struct ToldCourse {
  // One more than there are steps: the first, before them, is of nothing; after a closing it is as
  // before.
  std::vector<NotebookState> states;
  int operations_to_make = 0;  // writes, resizings, syncs and removals of the first step
  int operations = 0;          // of all
};

// Runs the steps and expects each to go well and to leave a notebook in which check finds nothing.
[[nodiscard]] ToldCourse told_of(const std::vector<Step>& steps);

}  // namespace keenfall::notebook::testing
