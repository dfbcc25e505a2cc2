// Names in one sentence.
#pragma once

#include <string>
#include <vector>

namespace keenfall::telling {

// "A", "A and B", "A, B and C"; empty for none.
[[nodiscard]] std::string listed(const std::vector<std::string>& names);

}  // namespace keenfall::telling
