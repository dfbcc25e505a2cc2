// What looks like a slip in a table that was taken in all the same.
//
// Names that differ only in spelling, a run that falls into two because a stray cell differs, an
// angle per side that may be an inclusive one, a thread named for some runs only. Each is a plain
// sentence.
#pragma once

#include "trials/trial.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::exchange {

struct RunDraft;

// Of runs of one name that a cell tells apart, where one has readings at a single checkpoint.
[[nodiscard]] std::vector<std::string> remarks_on_split_runs(std::span<const RunDraft> drafts);

[[nodiscard]] std::vector<std::string> remarks_on_names(const trials::Trial& trial);

[[nodiscard]] std::vector<std::string> remarks_on_angles(const trials::Trial& trial);

// Of kinds whose thread is named for some readings and not for others.
[[nodiscard]] std::vector<std::string> remarks_on_threads(const trials::Trial& trial);

}  // namespace keenfall::exchange
