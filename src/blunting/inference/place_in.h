// Place of a value in a list, put at its end if new.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

namespace keenfall::blunting {

inline std::size_t place_in(std::vector<std::size_t>& list, std::size_t value) {
  const auto found = std::ranges::find(list, value);
  if (found != list.end()) return static_cast<std::size_t>(found - list.begin());
  list.push_back(value);
  return list.size() - 1;
}

}  // namespace keenfall::blunting
