// The jobs that bring another notebook's content into one: from the notebook, or from a data
// package it was exported to. As one change, or not at all (notebook/merge.h says by which rules).
#pragma once

#include "base/result.h"
#include "notebook/merge.h"
#include "workbench/notebook_opening.h"

#include <string>

namespace keenfall::workbench {

struct MergeRequest {
  std::string notebook;
  std::string other;  // a notebook, or a data package
  notebook::MergeRules rules;
};

// Every conflict at once. Throws NotebookTrouble where either notebook is damaged: the other one is
// checked as a whole first.
[[nodiscard]] base::ResultOrProblems<notebook::Merged> merge_into(const MergeRequest& request,
                                                                  const Hand& hand);

}  // namespace keenfall::workbench
