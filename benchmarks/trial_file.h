// A trial as a table on the disk, for peers to read.
#pragma once

#include "base/result.h"
#include "trials/trial.h"

#include <filesystem>
#include <functional>
#include <optional>

namespace keenfall::benchmarks {

// Made and written in a process of its own, so that no later measurement counts its memory.
[[nodiscard]] std::optional<base::Problem> write_trial(const std::filesystem::path& path,
                                                       const std::function<trials::Trial()>& make);

}  // namespace keenfall::benchmarks
