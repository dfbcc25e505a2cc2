// How it was calculated, in plain words: of web/src/report/methods.html what bears on a report.
//
// There "<!--of read-->...<!--end-->" holds what is about edges that were read, "of tested" about
// edges that were tested, "of pairs" about comparisons; all else bears on every report.
#pragma once

#include "telling/report.h"

#include <string>
#include <string_view>
#include <vector>

namespace keenfall::page {

[[nodiscard]] std::string methods_of(const telling::Report& report);

// The text without its marks, and without what is of none of these.
[[nodiscard]] std::string kept_of(std::string_view text, const std::vector<std::string>& of);

}  // namespace keenfall::page
