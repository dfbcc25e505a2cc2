// Words and numbers that several pictures share.
#pragma once

#include "telling/arm_groups.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::page {

// " 1: the long name; 2: another." where pictures know edges by numbers; else empty.
[[nodiscard]] std::string key_words(const std::vector<telling::ArmName>& names,
                                    const std::vector<std::size_t>& arms);

// The first few of them as one paragraph, and how many more the table has.
[[nodiscard]] std::string some_of(const std::vector<std::string>& sentences);

}  // namespace keenfall::page
