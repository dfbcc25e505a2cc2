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
  std::int64_t revision = 0;  // from 1, and never again a lower one
  std::string cells;          // as whoever typed it has them written down; empty: it was taken in
  std::string at_utc;
  std::string who;

  bool operator==(const TypedSheet&) const = default;
};

// Nothing where there never was one.
[[nodiscard]] std::optional<TypedSheet> typed_sheet(const Notebook& notebook,
                                                    const std::string& trial_uid);

// `sheet.revision`: of the one it goes on from, 0 where there never was one. Out: its own. Refused
// with `conflicting` where the revision is another.
[[nodiscard]] base::Result<std::int64_t> keep_sheet(Notebook& notebook, const TypedSheet& sheet);

// It was taken in. Only where that revision is the one that is kept: its number goes on, so that
// whoever still holds the old one learns of it.
struct Forgetting {
  std::string trial_uid;
  std::int64_t revision = 0;
  std::string at_utc;
  std::string who;
};
void forget_sheet(Notebook& notebook, const Forgetting& forgetting);

}  // namespace keenfall::notebook
