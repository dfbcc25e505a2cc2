// Things of a person's own file and those known by themselves, in one list: of two of one name, in
// small or capital letters, the file's own stands alone, and that it does is noted.
#pragma once

#include "materials/spelling.h"

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::workbench {

// Adds to `things`, which are the file's, every known one whose name none of them has. A name that
// one has joins `in_place_of_known`, as `what` and the name: "steel C75S".
template <class Things, class Known>
void add_known(Things& things,
               const Known& known,
               std::string_view what,
               std::vector<std::string>& in_place_of_known) {
  const std::size_t own = things.size();
  for (const auto& each : known) {
    const std::string name = materials::lower_case(each.name);
    const bool is_there = std::any_of(
        things.begin(), things.begin() + static_cast<std::ptrdiff_t>(own), [&](const auto& thing) {
          return materials::lower_case(thing.name) == name;
        });
    if (is_there) {
      in_place_of_known.push_back(std::string(what) + " " + std::string(each.name));
    } else {
      things.push_back(each);
    }
  }
}

}  // namespace keenfall::workbench
