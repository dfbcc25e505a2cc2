// Taking a trial in, or trying to (kept_trials.h), while somebody is told how far that is, and may
// stop it: it then fails with a problem of the kind `interrupted`, and nothing was taken.
#pragma once

#include "base/execution.h"
#include "notebook/kept_trials.h"

#include <vector>

namespace keenfall::notebook {

[[nodiscard]] base::ResultOrProblems<Taken> take(Notebook& notebook,
                                                 trials::Trial trial,
                                                 const std::vector<TakenTable>& tables,
                                                 const Authorship& by,
                                                 const base::ProgressReport& progress);
[[nodiscard]] base::ResultOrProblems<Taken> would_take(const Notebook& notebook,
                                                       trials::Trial trial,
                                                       const std::vector<TakenTable>& tables,
                                                       const base::ProgressReport& progress);

}  // namespace keenfall::notebook
