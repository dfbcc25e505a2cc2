// The commands that bring content in and hand it out whole: merge, take of a data package, export.
#pragma once

#include "cli/asked.h"

namespace keenfall::cli {

[[nodiscard]] Outcome merge_command(const Asked& asked);
[[nodiscard]] Outcome take_package_command(const Asked& asked);
[[nodiscard]] Outcome export_command(const Asked& asked);

}  // namespace keenfall::cli
