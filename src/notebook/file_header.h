// What the first bytes of a file say before anything is opened: is it a notebook, and whose?
// SQLite's file format, section 1.3. Private to the folder.
#pragma once

#include "base/result.h"

#include <optional>
#include <string>

namespace keenfall::notebook {

// The problem with opening the file as a notebook; nothing where it looks like one this program
// knows. Only reads.
[[nodiscard]] std::optional<base::Problem> problem_of_file(const std::string& path);

}  // namespace keenfall::notebook
