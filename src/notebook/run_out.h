// Taking a run out of its trial that one entry of the journal brought in, though others came in
// after it.
//
// Undoing that entry is refused then, since a list is undone from its end on. Here the run goes
// alone: what else the entry brought (a blade, a series) stays, and the runs after it move up. It
// is an entry of its own and can be undone.
#pragma once

#include "base/result.h"
#include "notebook/notebook.h"

#include <cstdint>

namespace keenfall::notebook {

// Refused where there is no such entry, where it brought in no run or several, where that is not
// there any more, and where later entries changed it: those are named, and are undone first.
[[nodiscard]] base::Result<JournalEntry> take_run_out(Notebook& notebook,
                                                      std::int64_t entry,
                                                      const Authorship& by);

}  // namespace keenfall::notebook
