// Sheets that are being typed and were not taken in yet: one for each trial, and one for a new one.
//
// Kept so that neither a closed browser nor another one loses them. Each saying has a revision, and
// whoever saves says which one it goes on from, so that two who type at once do not write over each
// other unseen. Beside the journal: a sheet is changed in place and goes when it is taken in; it is
// in no package and is not merged.
#pragma once

#include "base/result.h"
#include "notebook/notebook.h"

#include <cstdint>
#include <optional>
#include <string>

namespace keenfall::notebook {

struct TypedSheet {
  std::string trial_uid;      // empty: of a new trial
  std::int64_t revision = 0;  // from 1
  std::string cells;          // as whoever typed it has them written down
  std::string at_utc;
  std::string who;

  bool operator==(const TypedSheet&) const = default;
};

// Nothing where none is kept.
[[nodiscard]] std::optional<TypedSheet> typed_sheet(const Notebook& notebook,
                                                    const std::string& trial_uid);

// `sheet.revision`: of the one it goes on from, 0 where there was none. Out: its own. Refused with
// `conflicting` where another revision is kept.
[[nodiscard]] base::Result<std::int64_t> keep_sheet(Notebook& notebook, const TypedSheet& sheet);

// Only where that revision is the one that is kept.
void forget_sheet(Notebook& notebook, const std::string& trial_uid, std::int64_t revision);

}  // namespace keenfall::notebook
