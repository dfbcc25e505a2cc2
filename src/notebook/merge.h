// Two notebooks made one: what another one has comes into this one, as one change.
//
// The same blade, trial or run is known again by its uid. What has no uid in common is one where
// that is sure: trials of one name that took the same table, the blades of one name in such trials,
// runs called alike that read the same. Media are one where they are called alike. Everything else
// that is called alike is a conflict until it is said whether it is one thing or two. A run that
// one notebook has more of grows; one that both have otherwise is a conflict too. Strikes and voids
// of either hold. Looks come along. All conflicts are said at once, and then nothing is merged; nor
// is anything of a notebook that is damaged.
#pragma once

#include "base/result.h"
#include "notebook/kept_trials.h"
#include "notebook/notebook.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook {

enum class AlikeNames {
  in_conflict,
  are_one,
  are_apart  // the other's have MergeRules::apart behind their name here
};

struct MergeRules {
  AlikeNames alike_names = AlikeNames::in_conflict;
  std::string apart;                // "R.": "A" of the other notebook is called "A (R.)" here
  bool keeps_what_is_here = false;  // where both record one thing otherwise
  // What is to be noticed of a trial that was put together: spellings that only two of its sources
  // have. It stays with the trial, as what is noticed of a table does. May be absent.
  std::function<std::vector<std::string>(const trials::Trial&)> remarks_on;
};

struct Merged {
  std::optional<JournalEntry> entry;  // absent: all of it was there already
  std::size_t trials_added = 0;
  Taken runs;  // its entry is not used
  std::size_t looks_added = 0;
  std::size_t not_taken = 0;         // of what the other records otherwise; a remark says each
  std::vector<std::string> remarks;  // what is called otherwise here, or was not taken
};

// what: as it stands in the journal, "merge there.keen".
[[nodiscard]] base::ResultOrProblems<Merged> merge(Notebook& into,
                                                   const Notebook& other,
                                                   const std::string& what,
                                                   const MergeRules& rules,
                                                   const Authorship& by);

}  // namespace keenfall::notebook
