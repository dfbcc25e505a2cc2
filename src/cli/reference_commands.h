// What `keenfall steels`, `keenfall grits` and `keenfall convert` print.
//
// In: the arguments as typed. Out: lines that fit the look's width and end in a newline, numerals
// aligned, every reference value with its trust mark and the key of its source. Fails with the
// Problem of the table that was asked: an unknown name, a grit of unknown system, units that do not
// go together.
#pragma once

#include "base/result.h"
#include "cli/look.h"

#include <string>
#include <string_view>

namespace keenfall::cli {

// All steels in short where the name is empty; else one with its sources.
[[nodiscard]] base::Result<std::string> steels_command(std::string_view name, const Look& look);

// All systems side by side where nothing is asked; one system's table ("JIS"); or one grit
// ("F1000", "9 um") with its nearest in the other systems. A bare number gets what it could be.
[[nodiscard]] base::Result<std::string> grits_command(std::string_view asked, const Look& look);

// "400gf" to "N", "61HRC" to "HV", "17deg-per-side" to "inclusive", "F1000" to "JIS".
[[nodiscard]] base::Result<std::string> convert_command(std::string_view quantity,
                                                        std::string_view to_unit,
                                                        const Look& look);

}  // namespace keenfall::cli
