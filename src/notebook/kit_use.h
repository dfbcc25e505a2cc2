// Which trials rest on a thing of the kit. Private to the folder.
#pragma once

#include "notebook/kit_shelf.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdint>
#include <string>
#include <vector>

namespace keenfall::notebook {

// What a trial only copied from (an edge, a stone) none rests on.
// `version`: of the database's schema. By name, in the order in which the trials came in.
[[nodiscard]] std::vector<std::string> trials_using(SQLite::Database& database,
                                                    const ShelvedThing& thing,
                                                    std::int64_t version);
// Of those the ones that would tell another story if it were called otherwise: that were cut, or
// whose plan is sealed.
[[nodiscard]] std::vector<std::string> trials_naming(SQLite::Database& database,
                                                     const ShelvedThing& thing);
[[nodiscard]] std::vector<std::string> trials_using_specimen(SQLite::Database& database,
                                                             std::int64_t blade_id,
                                                             const std::string& specimen);

}  // namespace keenfall::notebook
