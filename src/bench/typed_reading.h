// A reading that was typed in another unit than the sheet's.
#pragma once

#include "bench/entry.h"
#include "bench/run_sheet.h"

#include <string>

namespace keenfall::bench {

// That it was typed in: its own, else the sheet's.
[[nodiscard]] const std::string& unit_of(const RunSheet& sheet, const ReadingTaken& taken);

// Does it convert to the sheet's?
[[nodiscard]] bool is_unit_for(const RunSheet& sheet, const std::string& unit);

// The reading in the sheet's unit; as it is where its own does not convert.
[[nodiscard]] double in_unit_of(const RunSheet& sheet, const ReadingTaken& taken);

}  // namespace keenfall::bench
