// Taking back what a table brought in, to be corrected: its entry is undone, and its cells are the
// sheet that is typed. They are written anew from what is recorded, since a notebook keeps of a
// table no more than its digest.
//
// Fails as undoing does, where later entries rest on it among others; then nothing has changed.
// Throws NotebookTrouble.
#pragma once

#include "base/result.h"
#include "wire/app_pages.h"
#include "workbench/notebook_opening.h"

#include <cstdint>
#include <string>

namespace keenfall::workbench {

// The entry brought a table in. Refused where the sheet of its trial holds something that was typed
// and not taken in.
[[nodiscard]] base::Result<wire::TakenBack> taken_back(const std::string& notebook,
                                                       std::int64_t entry,
                                                       const Hand& hand);

}  // namespace keenfall::workbench
