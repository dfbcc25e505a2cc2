// What is counted and summed over simulated trials, by name: "trials", "covers half keenness". Sums
// of several batches are added up, so a batch is kept as one line of text.
#pragma once

#include "base/result.h"

#include <map>
#include <string>
#include <string_view>

namespace keenfall::trust {

using Sums = std::map<std::string, double>;

void add(Sums& sums, std::string_view name, double amount = 1);
void add_all(Sums& sums, const Sums& others);

// 0 where nothing was added.
[[nodiscard]] double sum_of(const Sums& sums, std::string_view name);

// "covers half keenness=47;trials=50", and back. Names hold no "=", ";" or line's end.
[[nodiscard]] std::string in_one_line(const Sums& sums);
[[nodiscard]] base::Result<Sums> sums_in(std::string_view line);

}  // namespace keenfall::trust
