// Letting devices at the bench in while the app is open: what was asked for with `open --bench`,
// and how it is said at the terminal.
#pragma once

#include "base/result.h"
#include "cli/surroundings.h"
#include "cli/typed_options.h"
#include "server/bench_door.h"

#include <optional>
#include <string>

namespace keenfall::cli {

// Nothing: no device is let in. Fails where an option needs another or cannot be read.
[[nodiscard]] base::ResultOrProblems<std::optional<server::BenchDoor::Settings>> bench_asked_for(
    const TypedBench& typed, const Surroundings& surroundings);

// Where it is, with a code for the first device, as text and as a picture for its camera.
[[nodiscard]] std::string bench_words(server::BenchDoor& door);

}  // namespace keenfall::cli
