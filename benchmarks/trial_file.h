// Trials as tables on the disk, for peers to read as well.
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

// Four arms, 16 runs, 408 readings: tests/reference/two_blades_two_media.csv.
[[nodiscard]] std::filesystem::path small_trial_table();

// Throws std::runtime_error where the table cannot be taken in.
[[nodiscard]] trials::Trial trial_in(const std::filesystem::path& table);

}  // namespace keenfall::benchmarks
