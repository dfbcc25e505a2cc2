// `keenfall scale DEVICE`: shows what a scale at a serial line sends until it is stopped.
//
// In: the words behind "scale". While it goes on it writes, at once, each reading that differs from
// the one before, each line that cannot be read with the reason, when the scale falls silent, is
// unplugged or comes back, and what was held where that is asked for. Ends with exit code 0 when it
// is stopped, with 4 where the device cannot be opened to begin with.
#pragma once

#include "cli/outcome.h"
#include "cli/surroundings.h"

#include <span>
#include <string>

namespace keenfall::cli {

[[nodiscard]] Outcome bench_scale_command(std::span<const std::string> words,
                                          const Surroundings& surroundings);

}  // namespace keenfall::cli
