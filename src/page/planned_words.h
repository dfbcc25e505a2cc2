// What is known of what was planned and claimed before a trial: the looks that were planned, the
// departures that were written down, and that no claim of before the first cut is recorded. Where a
// plan was sealed: what was claimed, when that was sealed, and what was done otherwise.
#pragma once

#include "telling/report.h"

#include <string>
#include <vector>

namespace keenfall::page {

// In whole sentences.
[[nodiscard]] std::vector<std::string> planned_words(const telling::Report& report);

}  // namespace keenfall::page
