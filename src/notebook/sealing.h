// What is sealed before the first reading stays so. Private to the folder.
#pragma once

#include "base/result.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdint>
#include <optional>
#include <string>

namespace keenfall::notebook {

// Undoing the entry would seal a trial's plan, or unseal it, although readings or edge lives of the
// trial are there: the trial's name. Nothing where it would not.
[[nodiscard]] std::optional<std::string> trial_whose_sealing_holds(SQLite::Database& database,
                                                                   std::int64_t entry);

}  // namespace keenfall::notebook
