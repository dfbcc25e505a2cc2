// Words and numbers that several pictures share.
#pragma once

#include "numerics/interval.h"
#include "telling/arm_groups.h"

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace keenfall::page {

// "34 (27 to 42)"
[[nodiscard]] std::string interval_words(const numerics::Interval& interval,
                                         const std::function<std::string(double)>& rounded);

// " 1: the long name; 2: another." where pictures know edges by numbers; else empty.
[[nodiscard]] std::string key_words(const std::vector<telling::ArmName>& names,
                                    const std::vector<std::size_t>& arms);

// The first few of them as one paragraph, and how many more the table has.
[[nodiscard]] std::string some_of(const std::vector<std::string>& sentences);

}  // namespace keenfall::page
