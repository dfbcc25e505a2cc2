// What another notebook's blades and trials are called in this one. Private to the folder.
#pragma once

#include "base/result.h"
#include "notebook/merge.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <map>
#include <string>
#include <vector>

namespace keenfall::notebook {

struct MergedNames {
  std::map<std::string, std::string> blades;  // there to here
  std::map<std::string, std::string> trials;
  std::vector<std::string> remarks;
  std::vector<base::Problem> problems;  // names that are in conflict
};

[[nodiscard]] MergedNames merged_names(SQLite::Database& here,
                                       SQLite::Database& there,
                                       const MergeRules& rules);

}  // namespace keenfall::notebook
