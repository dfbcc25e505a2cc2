// Words and numbers that several pictures share.
#pragma once

#include "numerics/interval.h"

#include <functional>
#include <string>
#include <vector>

namespace keenfall::page {

[[nodiscard]] std::string begun_large(std::string words);

// "34 (27 to 42)"
[[nodiscard]] std::string interval_words(const numerics::Interval& interval,
                                         const std::function<std::string(double)>& rounded);

// The first few of them as one paragraph, and how many more the table has.
[[nodiscard]] std::string some_of(const std::vector<std::string>& sentences);

}  // namespace keenfall::page
