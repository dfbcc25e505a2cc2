// What another notebook's kit has besides blades and media: edges, lots, threads, kinds of reading,
// stones. Private to the folder.
#pragma once

#include "base/result.h"
#include "notebook/merge.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>
#include <vector>

namespace keenfall::notebook {

struct MergedShelves {
  std::vector<base::Problem> problems;  // what is not the same in both
  std::vector<std::string> remarks;     // what is called otherwise here
};

// What has the same uid, or is called alike, is one thing; where it is not the same in both that is
// a problem, or the other's is set apart under another name.
[[nodiscard]] MergedShelves merge_shelves(SQLite::Database& here,
                                          SQLite::Database& there,
                                          const MergeRules& rules);

}  // namespace keenfall::notebook
